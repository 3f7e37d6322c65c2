namespace Momentum.QuantityGenerator;

/// <summary>A row of products: left, sign, right, and what comes out.</summary>
internal sealed class Product(Quantity left, char sign, Quantity right, Quantity result, bool ofVectors, bool ofScalars, string summary)
{
    internal Quantity Left => left;

    /// <summary>* and / with a scalar, x for a cross product, . for a projection.</summary>
    internal char Sign => sign;

    internal Quantity Right => right;

    internal Quantity Result => result;

    internal bool OfVectors => ofVectors;

    internal bool OfScalars => ofScalars;

    internal string Summary => summary;

    /// <summary>The factor that is a vector, where only one is: of mass times velocity the velocity.</summary>
    internal Quantity Vector => left.IsOfVectors ? left : right;

    /// <summary>The factor that stays a scalar beside the vector.</summary>
    internal Quantity Scalar => left.IsOfVectors ? right : left;
}
