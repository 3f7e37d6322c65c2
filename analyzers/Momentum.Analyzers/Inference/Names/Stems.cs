using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>What the words of a name say that it measures: <c>thrust</c> a force, <c>heading</c> an angle, <c>alt</c> a length or an angle.</summary>
internal static class Stems
{
    private static readonly Dictionary<string, string> _measured = Read(
        ("L", "length|len|height|width|depth|radius|radii|diameter|distance|dist|altitude|alt|elevation|thickness|offset|position|pos|arm|span|stroke|gap|clearance|lever|displacement|standoff|range|wavelength|separation|circumference|perimeter|visibility|ceiling|spacing|baseline|travel|wheelbase|easting|northing|undulation|focal|size|dx|dy|dz|path|margin|footage|mileage|odometer|depth|beam|draft|lift|level|vertical|horizontal|spot|nozzle|layer"),
        ("T", "time|duration|delay|period|interval|elapsed|timeout|age|dt|epoch|latency|lifetime|uptime|wait|timestamp|exposure|cooldown|ttl|remaining|sleep|debounce|poll|polling|retry|expiry|expiration|deadline|offset|gap|pause|idle|ping|lag|duty|elapse|ago|since|until|hold|fade|countdown|eta|cure|retention|heartbeat|keepalive|backoff|grace|runtime|playback|burn"),
        ("M", "mass|propellant|payload|ballast|weight|fuel"),
        ("F", "force|thrust|load|tension|drag|lift|pull|preload|friction|tractive|motive"),
        ("Q", "torque|moment"),
        ("E", "energy|work|heat|consumption|battery|capacity"),
        ("W", "power"),
        ("P", "pressure|stress|press|baro|barometer|barometric|qnh|qfe|modulus|strength"),
        ("K", "temperature|temp|dewpoint|temperatures|temps"),
        ("A", "angle|angles|ang|lat|latitude|lon|lng|longitude|heading|bearing|azimuth|az|elevation|el|alt|altitude|yaw|pitch|roll|tilt|pan|phase|theta|phi|psi|rotation|rot|course|track|declination|dec|inclination|slope|fov|attitude|orientation|aoa|sideslip|beta|alpha|gamma|anomaly|obliquity|zenith|twist|bank|steer|steering|hue|variation|deviation|direction|dir|turn|sweep|compass|hdg|perihelion|node|offset|position|latitudes|longitudes|meridian|parallel|curvature|swing|crank|aspect|separation|gimbal|ecliptic|anomaly|shoulder|elbow|wrist|joint"),
        ("R", "rate|rotation|spin|omega|speed|velocity|vel|angular|gyro|frequency|freq|rotational|slew|sampling|sample|clock|pwm|carrier|engine|motor|shaft|fan|rotor|turn|refresh|bandwidth|cutoff|spindle|yaw|pitch|roll|tuning|tune"),
        ("V", "speed|velocity|vel|rate|wind|airspeed|groundspeed|climb|sink|gust|slip|tas|ias|cruise|feedrate|feed"),
        ("G", "accel|acceleration|acc|gravity|deceleration|decel"),
        ("S", "area|section|surface|footprint|aperture"),
        ("U", "volume|capacity|tank|displacement"),
        ("I", "inertia|moi|ixx|iyy|izz"),
        ("J", "impulse|momentum"));

    /// <summary>Whether a word speaks of what <paramref name="unit"/> measures; null where no word speaks of any quantity.</summary>
    internal static bool? Speak(IReadOnlyList<string> words, Unit unit)
    {
        char measured = Measured(unit);
        bool any = false;
        foreach (string word in words)
        {
            if (_measured.TryGetValue(word, out string? quantities))
            {
                any = true;
                if (quantities.IndexOf(measured) >= 0)
                {
                    return true;
                }
            }
        }

        return any ? false : null;
    }

    /// <summary>Whether a word speaks of one of these quantities, by letter.</summary>
    internal static bool SpeakOf(IReadOnlyList<string> words, string quantities)
    {
        foreach (string word in words)
        {
            if (_measured.TryGetValue(word, out string? found) && found.IndexOfAny(quantities.ToCharArray()) >= 0)
            {
                return true;
            }
        }

        return false;
    }

    private static char Measured(Unit unit)
    {
        Dimension dimension = unit.Dimension;
        (int mass, int length, int time) = (dimension.Mass / Dimension.Whole, dimension.Length / Dimension.Whole, dimension.Time / Dimension.Whole);
        return (mass, length, time) switch
        {
            _ when dimension.Temperature != 0 => 'K',
            (0, 0, 0) when dimension.Angle != 0 => 'A',
            (0, 0, -1) => 'R',
            (0, 0, 1) => 'T',
            (0, 1, 0) => 'L',
            (0, 2, 0) => 'S',
            (0, 3, 0) => 'U',
            (0, 1, -1) => 'V',
            (0, 1, -2) => 'G',
            (1, 0, 0) => 'M',
            (1, 1, -2) => 'F',
            (1, 1, -1) => 'J',
            (1, 2, -2) => unit.Kind == Kind.Energy ? 'E' : 'Q',
            (1, 2, -3) => 'W',
            (1, -1, -2) => 'P',
            (1, 2, 0) => 'I',
            _ => '?',
        };
    }

    private static Dictionary<string, string> Read(params (string Quantity, string Words)[] groups)
    {
        Dictionary<string, string> read = new(StringComparer.Ordinal);
        foreach ((string quantity, string words) in groups)
        {
            foreach (string word in words.Split('|'))
            {
                read[word] = read.TryGetValue(word, out string? others) && others.IndexOf(quantity[0]) < 0 ? others + quantity : others ?? quantity;
            }
        }

        return read;
    }
}
