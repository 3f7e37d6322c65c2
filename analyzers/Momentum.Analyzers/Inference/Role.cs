namespace Momentum.Analyzers.Inference;

/// <summary>Why two values must be in one unit.</summary>
internal enum Role
{
    /// <summary>Added or subtracted.</summary>
    Sum,

    /// <summary>Divided with a remainder.</summary>
    Remainder,

    /// <summary>A factor of a product that only one unit makes sense in.</summary>
    Product,

    /// <summary>Compared, or taken the larger, the smaller or the angle of.</summary>
    Compare,

    /// <summary>Assigned to a variable, field or property of stated unit.</summary>
    Assign,

    /// <summary>Returned from a method of stated unit.</summary>
    Return,

    /// <summary>Passed to a parameter of stated unit.</summary>
    Argument,

    /// <summary>Passed to a trigonometric function, which takes radians.</summary>
    AngleArgument,
}
