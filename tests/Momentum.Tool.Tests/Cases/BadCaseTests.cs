namespace Momentum.Tool.Tests.Cases;

/// <summary>What a user expects of a wrong case: one clear line that names place, key and remedy, exit code 2, and nothing written.</summary>
public sealed class BadCaseTests
{
    private const string Inertia = "inertia       = { xx = \"14.2 kg*m^2\", yy = \"14.6 kg*m^2\", zz = \"17.5 kg*m^2 +/- 1 %\", xy = \"0.04 kg*m^2\", xz = \"-0.02 kg*m^2\", yz = \"0.01 kg*m^2\" }";
    private const string Hub = "hub_radius  = \"420 mm +/- 0.2 mm max\"";
    private const string Weight = "weight_mass = \"0.7 kg +/- 1 g\"";
    private const string Rate = "rate   = \"50 rpm +/- 2 %\"";
    private const string Mass = "mass          = \"120 kg +/- 0.5 %\"";
    private const string LetGo = "let_go      = \"radial\"";
    private const string Wish = "final_rate  = \"10 rpm\"";
    private const string Part = "[[part]]\nname = \"drum\"\n";

    public static TheoryData<BadCase> Slips =>
    [
        // Units and numbers.
        new("bare whole number for a length", Hub, "hub_radius = 420", "hub_radius", "despin.hub_radius", "a bare number has no unit", "Write for example hub_radius = \"380 mm"),
        new("bare decimal number for a mass", Weight, "weight_mass = 0.7", "weight_mass", "despin.weight_mass", "a bare number has no unit", "Write for example weight_mass"),
        new("number without unit in the text", Hub, "hub_radius = \"420\"", "hub_radius", "despin.hub_radius", "the unit is missing", "\"430 mm\""),
        new("unit without number", Hub, "hub_radius = \"mm\"", "hub_radius", "despin.hub_radius", "does not begin with a finite decimal number", "Write a number and a unit of length"),
        new("empty quantity", Hub, "hub_radius = \"\"", "hub_radius", "despin.hub_radius", "it is empty", "Write a number"),
        new("mass where a length is wanted", Hub, "hub_radius = \"420 kg\"", "hub_radius", "despin.hub_radius", "\"kg\" is a unit of mass, but a length is wanted", "\"430 mm\""),
        new("length where a mass is wanted", Weight, "weight_mass = \"0.7 m\"", "weight_mass", "despin.weight_mass", "is a unit of length, but a mass is wanted", "\"12.5 kg\""),
        new("force where a mass is wanted", Weight, "weight_mass = \"1.5 lbf\"", "weight_mass", "despin.weight_mass", "is a unit of force, but a mass is wanted", "Force is not mass"),
        new("mass where a force is wanted", "breaking_load = \"1.9 kN\"", "breaking_load = \"480 lb\"", "breaking_load", "despin.cord.breaking_load", "is a unit of mass, but a force is wanted", "Mass is not force: write lbf"),
        new("frequency for a spin rate", Rate, "rate = \"0.8 Hz\"", "rate =", "spin.rate", "is a unit of", "whether turns or radians are counted"),
        new("angle for a spin rate", Rate, "rate = \"5 rad\"", "rate =", "spin.rate", "is a unit of angle, but a spin rate is wanted", "write it a second"),
        new("torque for an inertia", "zz = \"17.5 kg*m^2 +/- 1 %\"", "zz = \"17.5 lbf*ft\"", "inertia", "vehicle.inertia.zz", "is a unit of torque, but a moment of inertia is wanted", "lbf*in*s^2"),
        new("area moment for an inertia", "zz = \"17.5 kg*m^2 +/- 1 %\"", "zz = \"17.5 mm^4\"", "inertia", "vehicle.inertia.zz", "moment of inertia", "second moment of area"),
        new("mass for a mass a length", "line_density  = \"6 g/m\"", "line_density = \"6 g\"", "line_density", "despin.cord.line_density", "but a linear density is wanted", "divide by its length"),
        new("volume where a length is wanted", Hub, "hub_radius = \"420 L\"", "hub_radius", "despin.hub_radius", "is a unit of volume, but a length is wanted", "\"430 mm\""),
        new("unknown unit", Hub, "hub_radius = \"420 furlogs\"", "hub_radius", "despin.hub_radius", "\"furlogs\" is not a unit of length", "Write for example"),
        new("misspelt unit", Rate, "rate = \"50 rmp\"", "rate =", "spin.rate", "\"rmp\" is not a unit of spin rate", "Did you mean \"rpm\"?"),
        new("wrong capitals in a unit", Hub, "hub_radius = \"420 MM\"", "hub_radius", "despin.hub_radius", "capitals matter", "Did you mean \"mm\"?"),
        new("minute written as m", "rate   = \"50 rpm +/- 2 %\"\nnutation = \"0.5 deg\"", "rate = \"50 rpm\"\nnutation = \"0.5 m\"", "nutation", "spin.nutation", "is a unit of length, but an angle is wanted", "deg"),
        new("gram for a grade", "nutation = \"0.5 deg\"", "nutation = \"0.5 g\"", "nutation", "spin.nutation", "is a unit of mass", "deg"),
        new("decimal comma", Hub, "hub_radius = \"420,5 mm\"", "hub_radius", "despin.hub_radius", "a comma is neither", "Use a point for decimals"),
        new("thousands separator", Hub, "hub_radius = \"1,420 mm\"", "hub_radius", "despin.hub_radius", "a comma is neither", "no separator"),
        new("not a number", Hub, "hub_radius = \"NaN mm\"", "hub_radius", "despin.hub_radius", "does not begin with a finite decimal number", "Write a number"),
        new("infinity", Weight, "weight_mass = \"Infinity kg\"", "weight_mass", "despin.weight_mass", "does not begin with a finite decimal number", "Write a number"),
        new("the sign of infinity", Weight, "weight_mass = \"∞ kg\"", "weight_mass", "despin.weight_mass", "does not begin with a finite decimal number", "Write a number"),
        new("bare TOML infinity", Weight, "weight_mass = inf", "weight_mass", "despin.weight_mass", "a bare number has no unit", "Write for example"),
        new("bare TOML not-a-number", Hub, "hub_radius = nan", "hub_radius", "despin.hub_radius", "a bare number has no unit", "Write for example"),
        new("overflow", Mass, "mass = \"1e999 kg\"", "mass =", "vehicle.mass", "the number overflows", "Write for example"),
        new("beyond any vehicle", Mass, "mass = \"1e300 kg\"", "mass =", "vehicle.mass", "outside the range this program computes in", "Check the exponent and the unit"),
        new("overflow in the unit", Mass, "mass = \"1e308 t\"", "mass =", "vehicle.mass", "outside the range this program computes in", "Check the exponent and the unit"),
        new("overflow in the unit of a tolerance", Mass, "mass = \"120 kg +/- 1e308 t\"", "mass =", "vehicle.mass", "in its tolerance, it is outside the range", "Check the exponent and the unit"),
        new("digits of another script", Hub, "hub_radius = \"٤٢٠ mm\"", "hub_radius", "despin.hub_radius", "does not begin with a finite decimal number in the digits 0 to 9", "Write a number"),
        new("digits of another script after the point", Hub, "hub_radius = \"420.٥ mm\"", "hub_radius", "despin.hub_radius", "is not a unit of length", "Write for example"),
        new("full-width digits in an exponent", Hub, "hub_radius = \"4e２ mm\"", "hub_radius", "despin.hub_radius", "is not a unit of length", "Write for example"),
        new("underflow", Hub, "hub_radius = \"1e-300 mm\"", "hub_radius", "despin.hub_radius", "outside the range this program computes in", "Check the exponent and the unit"),
        new("two numbers", Hub, "hub_radius = \"420 mm 5 mm\"", "hub_radius", "despin.hub_radius", "is not a unit of length", "Write for example"),
        new("truth value for a length", Hub, "hub_radius = true", "hub_radius", "despin.hub_radius", "a truth value cannot stand here", "Write for example"),
        new("list for a length", Hub, "hub_radius = [\"420 mm\"]", "hub_radius", "despin.hub_radius", "a list of 1 cannot stand here", "Write for example"),
        new("table for a length", Hub, "hub_radius = { value = \"420 mm\" }", "hub_radius", "despin.hub_radius", "a table cannot stand here", "Write for example"),
        new("date for a length", Hub, "hub_radius = 2026-01-01", "hub_radius", "despin.hub_radius", "a date cannot stand here", "Write for example"),

        // Tolerances.
        new("two tolerances", Hub, "hub_radius = \"420 mm +/- 1 mm +/- 2 mm\"", "hub_radius", "despin.hub_radius", "more than one tolerance", "Write one"),
        new("tolerance of the wrong dimension", Hub, "hub_radius = \"420 mm +/- 1 kg\"", "hub_radius", "despin.hub_radius", "in its tolerance", "\"430 mm\""),
        new("tolerance without unit", Hub, "hub_radius = \"420 mm +/- 1\"", "hub_radius", "despin.hub_radius", "in its tolerance, the unit is missing", "Write for example"),
        new("zero tolerance", Hub, "hub_radius = \"420 mm +/- 0 mm\"", "hub_radius", "despin.hub_radius", "its tolerance is not more than zero", "one sigma"),
        new("negative tolerance", Hub, "hub_radius = \"420 mm +/- -1 mm\"", "hub_radius", "despin.hub_radius", "its tolerance is not more than zero", "one sigma"),
        new("tolerance above the value", Hub, "hub_radius = \"420 mm +/- 150 %\"", "hub_radius", "despin.hub_radius", "its tolerance is larger than the value itself", "one sigma"),
        new("per cent of zero", "final_rate  = \"0 rpm\"", "final_rate = \"0 rpm +/- 2 %\"", "final_rate = \"0", "despin.final_rate", "a tolerance in per cent of zero is zero", "as an amount with its unit"),
        new("unfinished tolerance", Hub, "hub_radius = \"420 mm +/-\"", "hub_radius", "despin.hub_radius", "in its tolerance, it is empty", "Write a number"),

        // Range.
        new("negative mass", Weight, "weight_mass = \"-0.7 kg\"", "weight_mass", "despin.weight_mass", "it is not more than 0 kg", "Write for example weight_mass"),
        new("zero mass of the body", Mass, "mass = \"0 kg\"", "mass =", "vehicle.mass", "it is not more than 0 kg", "Write for example mass"),
        new("zero spin", Rate, "rate = \"0 rpm\"", "rate =", "spin.rate", "it is not more than 0 rpm", "Write for example rate"),
        new("negative spin", Rate, "rate = \"-50 rpm\"", "rate =", "spin.rate", "it is not more than 0 rpm", "Write for example rate"),
        new("zero hub radius", Hub, "hub_radius = \"0 mm\"", "hub_radius", "despin.hub_radius", "it is not more than 0 mm", "Write for example hub_radius"),
        new("non-positive cord", Weight, "cord_length = \"0 m\"", "cord_length", "despin.cord_length", "it is not more than 0 m", "Write for example cord_length"),
        new("negative inertia", "xx = \"14.2 kg*m^2\"", "xx = \"-14.2 kg*m^2\"", "inertia", "vehicle.inertia.xx", "it is not more than 0 kg*m^2", "Write for example xx"),
        new("nutation beyond a right angle", "nutation = \"0.5 deg\"", "nutation = \"95 deg\"", "nutation", "spin.nutation", "it is more than 90 deg", "Write for example nutation"),
        new("one weight", "weights     = 2", "weights = 1", "weights", "despin.weights", "it is out of range", "Write for example weights = 2"),
        new("half a weight", "weights     = 2", "weights = 2.5", "weights", "despin.weights", "a bare number cannot stand here", "Write for example weights = 2"),
        new("weights as text", "weights     = 2", "weights = \"2\"", "weights", "despin.weights", "a text cannot stand here", "Write for example weights = 2"),
        new("weights beyond an integer", "weights     = 2", "weights = 99999999999", "weights", "despin.weights", "not a whole number of usual size", "Write for example weights = 2"),
        new("final rate above the initial", "final_rate  = \"0 rpm\"", "final_rate = \"60 rpm\"", "final_rate = \"60", "despin.final_rate", "it is not below the rate before release", "final_rate = \"0 rpm\""),

        // Keys.
        new("misspelt key", "hub_radius  =", "hub_raduis =", "hub_raduis", "despin.hub_raduis", "[despin] has no such key", "Did you mean hub_radius?"),
        new("misspelt section", "[require]", "[requires]", "requires", "requires", "unknown key or section", "Did you mean require?"),
        new("key of another section", "nutation = \"0.5 deg\"", "hub_radius = \"420 mm\"", "hub_radius = \"420 mm\"", "spin.hub_radius", "[spin] has no such key", "belongs to [despin]"),
        new("unknown key of the cord", "line_density  =", "line_densitty =", "line_densitty", "despin.cord.line_densitty", "[despin.cord] has no such key", "Did you mean line_density?"),
        new("unknown key in braces", "yz = \"0.01 kg*m^2\"", "zy = \"0.01 kg*m^2\"", "inertia", "vehicle.inertia.zy", "[vehicle.inertia] has no such key", "Did you mean"),
        new("unknown key at the top", "title  =", "author = \"nobody\"\ntitle =", "author", "author", "unknown key or section", "Remove it"),
        new("missing required key", Hub + "\n", "", "[despin]", "despin.hub_radius", "it is missing", "Add to [despin] for example hub_radius"),
        new("missing let-go", LetGo + "\n", "", "[despin]", "despin.let_go", "it is missing", "Add to [despin] for example let_go = \"radial\""),
        new("missing title", "title  = \"Invented: Sandpiper test article\"\n", "", "format", "title", "it is missing", "Add at the top of the file title"),
        new("missing section", "[spin]\n" + Rate + "\nnutation = \"0.5 deg\"\n", "", "format", "spin", "it is missing", "Add a section [spin]"),
        new("empty title", "title  = \"Invented: Sandpiper test article\"", "title = \"  \"", "title", "title", "it is empty", "Write for example title"),
        new("wrong word", "spin_axis     = \"z\"", "spin_axis = \"w\"", "spin_axis", "vehicle.spin_axis", "none of the words allowed", "Write for example spin_axis = \"z\""),
        new("misspelt word", "inertia_about = \"centre of mass\"", "inertia_about = \"center of mass\"", "inertia_about", "vehicle.inertia_about", "none of the words allowed", "Did you mean \"centre of mass\"?"),
        new("section as a value", "format = 1", "format = 1\nburn = \"yes\"", "burn", "burn", "a text cannot stand here", "[burn]"),

        // What no key can judge alone.
        new("over-determined", Weight, Weight + "\ncord_length = \"3 m\"", "cord_length", "despin.cord_length", "all given", "Remove the one you want computed"),
        new("under-determined", Weight + "\n", "", "[despin]", "despin", "only final_rate is given", "weight_mass ="),
        new("nothing to solve from", Weight + "\nfinal_rate  = \"0 rpm\"\n", "", "[despin]", "despin", "none of weight_mass, cord_length and final_rate", "Add for example"),
        new("deck edge within the hub", Weight, Weight + "\ndeck_edge = { radius = \"400 mm\", height = \"30 mm\" }", "deck_edge", "despin.deck_edge.radius", "within the hub radius", "not its diameter"),
        new("deck edge in the cord plane", Weight, Weight + "\ndeck_edge = { radius = \"430 mm\", height = \"0 mm\" }", "deck_edge", "despin.deck_edge.height", "would lie in the cord plane", "negative below it"),
        new("deck edge without a height", Weight, Weight + "\ndeck_edge = { radius = \"430 mm\" }", "deck_edge", "despin.deck_edge.height", "it is missing", "Add to [despin.deck_edge] for example height"),
        new("deck edge that is no table", Weight, Weight + "\ndeck_edge = \"430 mm\"", "deck_edge", "despin.deck_edge", "a text cannot stand here", "Begin the section with [despin.deck_edge]"),
        new("let-go without a moment", LetGo, "let_go = {}", "let_go", "despin.let_go", "it says no moment", "let_go = \"radial\""),
        new("let-go with two moments", LetGo, "let_go = { rule = \"radial\", angle = \"60 deg\" }", "let_go", "despin.let_go", "more than one moment", "let_go = \"radial\""),
        new("misspelt let-go", LetGo, "let_go = \"radail\"", "let_go", "despin.let_go.rule", "none of the words allowed", "Did you mean \"radial\"?"),
        new("let-go angle out of range", LetGo, "let_go = { angle = \"270 deg\" }", "let_go", "despin.let_go.angle", "it is more than 180 deg", "angle = \"60 deg\""),
        new("let-go rate and final rate", LetGo, "let_go = { rate = \"10 rpm\" }", "final_rate  = \"0 rpm\"", "despin.final_rate", "fixes the spin rate afterwards", "Remove final_rate"),
        new("inertia without its point", "inertia_about = \"centre of mass\"\n", "", "[vehicle]", "vehicle.inertia_about", "it is missing", "inertia_about = \"centre of mass\""),
        new("products without their sign", "product_sign  = \"tensor element\"\n", "", "[vehicle]", "vehicle.product_sign", "it is missing", "product_sign = \"tensor element\""),
        new("spin moment missing", "zz = \"17.5 kg*m^2 +/- 1 %\", ", "", "inertia", "vehicle.inertia.zz", "it is the moment about the spin axis", "zz ="),
        new("one transverse moment missing", Inertia, "inertia = { xx = \"14.2 kg*m^2\", zz = \"17.5 kg*m^2\" }", "inertia = {", "vehicle.inertia", "one of the three moments is missing", "Add the third moment"),
        new("neither tensor nor parts", Inertia + "\n", "", "[vehicle]", "vehicle.inertia", "there are no [[part]] tables", "inertia = {"),
        new("tensor and parts", "[spin]", Part + "shape = \"point\"\nmass = \"1 kg\"\n[spin]", "inertia ", "vehicle.inertia", "the body is given twice", "Remove"),
        new("centre with two numbers", "centre        = [\"0 mm\", \"0 mm\", \"250 mm\"]", "centre = [\"0 mm\", \"250 mm\"]", "centre", "vehicle.centre", "a list of 2 cannot stand here", "Write for example centre"),
        new("centre with a bare number", "centre        = [\"0 mm\", \"0 mm\", \"250 mm\"]", "centre = [\"0 mm\", 0, \"250 mm\"]", "centre", "vehicle.centre[1]", "a bare number cannot stand here", "Write for example centre"),
        new("requirement without comparison", "cord_safety_factor = \"> 3\"", "cord_safety_factor = \"3\"", "cord_safety_factor", "require.cord_safety_factor", "it does not begin with < or >", "cord_safety_factor = \"> 3\""),
        new("requirement the wrong way round", "final_rate  = \"< 1 rpm\"", "final_rate = \"> 1 rpm\"", "final_rate = \">", "require.final_rate", "asks for the opposite", "final_rate = \"< 2 rpm\""),
        new("requirement of the wrong dimension", "final_rate  = \"< 1 rpm\"", "final_rate = \"< 1 kg\"", "final_rate = \"<", "require.final_rate", "is a unit of mass, but a spin rate is wanted", "final_rate = \"< 2 rpm\""),
        new("requirement with a tolerance", "final_rate  = \"< 1 rpm\"", "final_rate = \"< 1 rpm +/- 2 %\"", "final_rate = \"<", "require.final_rate", "a requirement has no tolerance", "final_rate = \"< 2 rpm\""),
        new("old name of the nutation", "nutation = \"0.5 deg\"", "wobble = \"0.5 deg\"", "wobble", "spin.wobble", "has another name now, nutation", "Write nutation in place of wobble"),
        new("old name of the required nutation", "cord_safety_factor = \"> 3\"", "wobble = \"< 5 deg\"", "wobble", "require.wobble", "has another name now, nutation", "Write nutation in place of wobble"),
        new("old name of the safety factor", "cord_safety_factor", "cord_margin", "cord_margin", "require.cord_margin", "has another name now, cord_safety_factor", "Write cord_safety_factor in place of cord_margin"),
        new("old name of the cord plane's offset", LetGo, LetGo + "\ndeck_offset = \"12 mm\"", "deck_offset", "despin.deck_offset", "has another name now, cord_plane_offset", "Write cord_plane_offset in place of deck_offset"),
        new("requirement below nothing", "final_rate  = \"< 1 rpm\"", "final_rate = \"< 0 rpm\"", "final_rate = \"<", "require.final_rate", "nothing real is below zero", "final_rate = \"< 2 rpm\""),
        new("burn without thrust", "[require]", "[burn]\nduration = \"18 s\"\n[require]", "[burn]", "burn.thrust", "it is missing", "thrust ="),
        new("apogee below perigee", "[require]", "[orbit]\nperigee_height = \"600 km\"\napogee_height = \"400 km\"\n[require]", "apogee_height", "orbit.apogee_height", "lower than the perigee", "Exchange"),
        new("bench with a wrong unit", "[require]", "[bench]\ngravity = \"9.81 m/s\"\n[require]", "gravity", "bench.gravity", "acceleration is wanted", "m/s^2"),

        // Physics.
        new("triangle inequality", "zz = \"17.5 kg*m^2 +/- 1 %\"", "zz = \"29.5 kg*m^2\"", "inertia", "vehicle.inertia", "zz = 29.5", "Check the values, their units"),
        new("products too large", "xy = \"0.04 kg*m^2\"", "xy = \"16 kg*m^2\"", "inertia", "vehicle.inertia", "principal moments", "Check the values, their units"),
        new("stated about another point than said", "inertia_about = \"centre of mass\"", "inertia_about = \"origin\"", "inertia  ", "vehicle.inertia", "leaves something not physical", "inertia_about"),
        new("hub far too small for the inertia", Hub, "hub_radius = \"4.2 mm\"", "hub_radius", "despin.hub_radius", "contradicts mass and inertia", "Check the units of hub radius"),
        new("hub far too large for the inertia", Hub, "hub_radius = \"420 m\"", "hub_radius", "despin.hub_radius", "contradicts mass and inertia", "Check the units of hub radius"),

        // TOML and format.
        new("text without its end", "title  = \"Invented: Sandpiper test article\"", "title = \"Invented", "title", "", "not well-formed TOML", "Mend this line"),
        new("value missing", Hub, "hub_radius =", "hub_radius", "", "not well-formed TOML", "Mend this line"),
        new("equals sign missing", Hub, "hub_radius \"420 mm\"", "hub_radius", "", "not well-formed TOML", "Mend this line"),
        new("bracket missing", "[spin]", "[spin", "[spin", "", "not well-formed TOML", "Mend this line"),
        new("key twice", Hub, Hub + "\nhub_radius = \"430 mm\"", "hub_radius = \"430 mm\"", "", "already defined", "Mend this line"),
        new("section twice", "[require]", "[spin]\n[require]", "[spin]\n[require]", "", "already defined", "Mend this line"),
        new("two values on a line", "weights     = 2", "weights = 2 3", "weights", "", "not well-formed TOML", "Mend this line"),
        new("format missing", "format = 1\n", "", "title", "format", "it is missing", "Write format = 1 as the first line"),
        new("format of a newer program", "format = 1", "format = 2", "format", "format", "written for a newer program", "Update momentum"),
        new("format that never was", "format = 1", "format = 0", "format", "format", "there was never such a format", "Write format = 1"),
        new("format as text", "format = 1", "format = \"one\"", "format", "format", "not a whole number", "Write format = 1"),
    ];

    public static TheoryData<BadCase> Parts =>
    [
        new("part without shape", "", Part + "mass = \"1 kg\"\n", "[[part]]", "part[0].shape", "it is missing", "shape = \"cylinder\""),
        new("part without name", "", "[[part]]\nshape = \"point\"\nmass = \"1 kg\"\n", "[[part]]", "part[0].name", "it is missing", "name ="),
        new("part without mass", "", Part + "shape = \"point\"\n", "[[part]]", "part[0]", "neither mass nor density is given", "Add for example mass"),
        new("part with mass and density", "", Part + "shape = \"sphere\"\nradius = \"1 m\"\nmass = \"1 kg\"\ndensity = \"2700 kg/m^3\"\n", "density = \"2700", "part[0].density", "both given", "Remove one of the two"),
        new("density of a point", "", Part + "shape = \"point\"\ndensity = \"2700 kg/m^3\"\n", "density = \"2700", "part[0].density", "a point has no volume", "Give its mass"),
        new("cylinder without height", "", Part + "shape = \"cylinder\"\nmass = \"1 kg\"\nradius = \"1 m\"\n", "[[part]]", "part[0].height", "a cylinder needs it", "height ="),
        new("sphere with a height", "", Part + "shape = \"sphere\"\nmass = \"1 kg\"\nradius = \"1 m\"\nheight = \"1 m\"\n", "height", "part[0].height", "a sphere has no height", "Remove it, or change the shape"),
        new("tube inside out", "", Part + "shape = \"tube\"\nmass = \"1 kg\"\nradius = \"1 m\"\ninner_radius = \"1.2 m\"\nheight = \"1 m\"\n", "inner_radius", "part[0].inner_radius", "not less than the outer radius", "inner_radius = "),
        new("mesh without its unit", "", Part + "shape = \"mesh\"\nmass = \"1 kg\"\nfile = \"a.stl\"\n", "[[part]]", "part[0].file_unit", "a mesh needs it", "file_unit"),
        new("growth beyond double", "", Part + "shape = \"point\"\nmass = \"1 kg\"\ngrowth = \"120 %\"\n", "growth", "part[0].growth", "it is more than 1", "growth = \"5 %\""),
        new("unknown shape", "", Part + "shape = \"cylindre\"\nmass = \"1 kg\"\n", "shape", "part[0].shape", "none of the words allowed", "Did you mean \"cylinder\"?"),
        new("part that is no table", "", "part = \"drum\"\n", "part =", "part", "cannot stand here", "[[part]]"),
    ];

    /// <summary>Slips in a case whose cords are to be sized as springs.</summary>
    public static TheoryData<BadCase> SpringSlips =>
    [
        new("springs for a complete de-spin", Wish, "final_rate = \"0 rpm\"", "final_rate = \"0", "despin.final_rate", "forgive_spin_up = true has no design for it", "remove cord.forgive_spin_up"),
        new("springs for a reversed spin", Wish, "final_rate = \"-5 rpm\"", "final_rate = \"-5", "despin.final_rate", "in the sense of the spin before release", "Write for example final_rate = \"10 rpm\""),
        new("springs for next to no spin", Wish, "final_rate = \"0.04 rpm\"", "final_rate = \"0.04", "despin.final_rate", "has no design for it", "at least 0.001 of spin.rate, 0.05 rpm"),
        new("springs that add spin", Wish, "final_rate = \"60 rpm\"", "final_rate = \"60", "despin.final_rate", "it is not below the rate before release", "Write for example final_rate = \"10 rpm\""),
        new("springs and a stated stiffness", "forgive_spin_up = true", "forgive_spin_up = true\nstiffness = \"300 N\"", "stiffness", "despin.cord.stiffness", "forgive_spin_up = true solves for it", "Remove stiffness"),
        new("springs with mass", "forgive_spin_up = true", "forgive_spin_up = true\nline_density = \"6 g/m\"", "line_density", "despin.cord.line_density", "sized as springs without mass", "Remove line_density"),
        new("springs without a wish", Wish, "cord_length = \"2 m\"", "[despin]", "despin.final_rate", "it is missing, and forgive_spin_up = true solves for the stiffness", "Add for example final_rate = \"10 rpm\" and remove cord_length"),
        new("springs with only a weight", Wish, "", "[despin]", "despin", "only weight_mass is given", "Add for example final_rate = \"10 rpm\""),
        new("springs with nothing left to solve for", Wish, Wish + "\ncord_length = \"2 m\"", "cord_length", "despin.cord_length", "nothing is left to solve for", "Remove the one"),
        new("springs and a let-go rate", LetGo, "let_go = { rate = \"10 rpm\" }", "let_go", "despin.let_go", "there is nothing for forgive_spin_up = true to forgive", "Let go at \"tangent\""),
        new("springs as text", "forgive_spin_up = true", "forgive_spin_up = \"true\"", "forgive_spin_up", "despin.cord.forgive_spin_up", "a text cannot stand here", "Write for example forgive_spin_up = true"),
        new("springs misspelt", "forgive_spin_up = true", "forgives_spin_up = true", "forgives_spin_up", "despin.cord.forgives_spin_up", "has no such key", "Did you mean forgive_spin_up?"),
        new("springs on the wrong floor", "hub_radius", "forgive_spin_up = true\nhub_radius", "forgive_spin_up", "despin.forgive_spin_up", "has no such key", "belongs to [despin.cord]"),
        new("springs damped beyond all measure", "damping = \"0.05\"", "damping = \"50\"", "damping", "despin.cord.damping", "it is more than 10", "damping = \"0.02\""),
    ];

    [Theory]
    [MemberData(nameof(SpringSlips))]
    public void A_slip_about_springs_is_told_in_one_line_with_place_key_and_remedy(BadCase slip)
    {
        Assert.Contains(slip.Piece, SampleCase.OnSprings, StringComparison.Ordinal);
        AssertRefused(slip, SampleCase.OnSprings.Replace(slip.Piece, slip.Replacement, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Slips))]
    public void A_slip_is_told_in_one_line_with_place_key_and_remedy(BadCase slip) =>
        AssertRefused(slip, SampleCase.With(slip.Piece, slip.Replacement));

    [Theory]
    [MemberData(nameof(Parts))]
    public void A_slip_in_a_part_is_told_in_one_line_with_place_key_and_remedy(BadCase slip)
    {
        string vehicle = SampleCase.Text[SampleCase.Text.IndexOf("mass ", StringComparison.Ordinal)..SampleCase.Text.IndexOf("spin_axis", StringComparison.Ordinal)];
        string withoutTensor = SampleCase.With(vehicle, "");
        AssertRefused(slip, slip.Replacement.StartsWith("part =", StringComparison.Ordinal)
            ? withoutTensor.Replace("format = 1\n", "format = 1\n" + slip.Replacement, StringComparison.Ordinal)
            : withoutTensor + slip.Replacement);
    }

    private static void AssertRefused(BadCase slip, string text)
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", text);
        string[][] commandLines = [["check", path], ["size", path], ["run", path, "--output", place.PathOf("history.csv")], ["report", path]];
        foreach (string[] commandLine in commandLines)
        {
            Invocation run = Invocation.Of(commandLine);

            Assert.Equal(2, run.ExitCode);
            Assert.Empty(run.Output);
            string line = Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
            Assert.StartsWith($"{path}:{SampleCase.LineOf(text, slip.At)}:", line, StringComparison.Ordinal);
            Assert.Contains(": error: ", line, StringComparison.Ordinal);
            Assert.Contains(slip.Key.Length == 0 ? "error: " : $" {slip.Key}", line, StringComparison.Ordinal);
            Assert.Contains(slip.Says, line, StringComparison.Ordinal);
            Assert.Contains(slip.Remedy, line[(line.IndexOf(slip.Says, StringComparison.Ordinal) + slip.Says.Length)..], StringComparison.Ordinal);
            Assert.DoesNotContain("Exception", line, StringComparison.Ordinal);
            Assert.Equal(["case.toml"], place.Files);
        }
    }
}
