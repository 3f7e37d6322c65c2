using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers;

/// <summary>Every rule's id, title, message and severity, together.</summary>
internal static class Descriptors
{
    private const string UnitMessage = "'{0}' is in {1}, but {2} {3}; {4}";

    internal static readonly DiagnosticDescriptor UnitsAdded = Error("MOM001", "Different units are added", UnitMessage);
    internal static readonly DiagnosticDescriptor UnitsCompared = Error("MOM002", "Different units are compared", UnitMessage);
    internal static readonly DiagnosticDescriptor UnitAssigned = Error("MOM003", "A value is stored or returned in another unit than stated", UnitMessage);
    internal static readonly DiagnosticDescriptor UnitPassed = Error("MOM004", "A value is passed in another unit than the parameter takes", UnitMessage);
    internal static readonly DiagnosticDescriptor ProductUnit = Error("MOM005", "A product or quotient is not in the unit that is expected", UnitMessage);
    internal static readonly DiagnosticDescriptor AngleUnit = Error("MOM006", "An angle is passed to a function in the wrong unit", UnitMessage);
    internal static readonly DiagnosticDescriptor TorqueAndEnergy = Error("MOM007", "Torque and energy are confused", UnitMessage);
    internal static readonly DiagnosticDescriptor RotationRates = Error("MOM008", "Revolutions, radians and hertz are confused", UnitMessage);
    internal static readonly DiagnosticDescriptor MassAndForce = Error("MOM009", "Mass and force, or pounds and slugs, are confused", UnitMessage);
    internal static readonly DiagnosticDescriptor ConversionByHand = Warning("MOM010", "A unit is converted by a number written by hand", "'{0}' converts {1} to {2} by hand; read '{3}' instead");
    internal static readonly DiagnosticDescriptor Frames = Error("MOM011", "Components of different frames are mixed", "'{0}' is along the axes of {1}, but {2} {3}; {4}");
    internal static readonly DiagnosticDescriptor Points = Error("MOM012", "Inertia about different points is mixed", "'{0}' is about {1}, but {2} {3}; {4}");
    internal static readonly DiagnosticDescriptor Signs = Error("MOM013", "Sign conventions of products of inertia are mixed", "'{0}' has products of inertia by the convention {1}, but {2} {3}; {4}");
    internal static readonly DiagnosticDescriptor ResultUnused = Warning("MOM014", "A quantity is computed and thrown away", "'{0}' gives a new {1} and changes nothing; use the result");
    internal static readonly DiagnosticDescriptor Equality = Warning("MOM015", "Measured values are compared for equality", "'{0}' asks whether two measured values are equal to the last bit; {1}");
    internal static readonly DiagnosticDescriptor UnitText = Error("MOM016", "The text of a unit cannot be read", "'{0}' is not a unit that can be read; {1}");
    internal static readonly DiagnosticDescriptor Temperatures = Error("MOM017", "A temperature and a temperature difference are confused", UnitMessage);
    internal static readonly DiagnosticDescriptor Setting = Warning("MOM018", "A setting of the analyzer cannot be read", "'{0} = {1}' is not read; write {2}");
    internal static readonly DiagnosticDescriptor NamesDisagree = new(
        "MOM101", "Two names state different units", UnitMessage + " (by their names)", Categories.Named, DiagnosticSeverity.Warning, isEnabledByDefault: true, helpLinkUri: Help("MOM101"));

    internal static readonly DiagnosticDescriptor NameContradicts = new(
        "MOM201", "A name states another unit than the value has", UnitMessage + " (one of the two by its name only)", Categories.Suggested, DiagnosticSeverity.Info, isEnabledByDefault: true, helpLinkUri: Help("MOM201"));

    internal static readonly DiagnosticDescriptor GuessedName = new(
        "MOM202", "A name that may state a unit disagrees", UnitMessage + " (if the names mean that)", Categories.Suggested, DiagnosticSeverity.Info, isEnabledByDefault: false, helpLinkUri: Help("MOM202"));

    private static DiagnosticDescriptor Error(string id, string title, string message) =>
        new(id, title, message, Categories.Stated, DiagnosticSeverity.Error, isEnabledByDefault: true, helpLinkUri: Help(id));

    private static DiagnosticDescriptor Warning(string id, string title, string message) =>
        new(id, title, message, Categories.Stated, DiagnosticSeverity.Warning, isEnabledByDefault: true, helpLinkUri: Help(id));

    // A path in the repository; becomes a link once the repository has a public home.
    private static string Help(string id) => $"analyzers/docs/{id}.md";
}
