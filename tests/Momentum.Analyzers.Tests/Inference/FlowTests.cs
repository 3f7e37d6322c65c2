using Momentum.Analyzers.Tests.Verification;

namespace Momentum.Analyzers.Tests.Inference;

public sealed class FlowTests
{
    [Theory]
    [InlineData("double x = a.Feet; if (b.Meters > 2) { x = b.Feet; } var l = Length.FromMeters({|MOM004:x|});")]
    [InlineData("double x = b.Meters > 2 ? a.Feet : b.Feet; var l = Length.FromMeters({|MOM004:x|});")]
    [InlineData("double x = 0; while (x < 10) { x += a.Feet; } var l = Length.FromMeters({|MOM004:x|});")]
    [InlineData("var (x, y) = (a.Feet, time.Seconds); var l = Length.FromMeters({|MOM004:x|}); var d = Duration.FromSeconds(y);")]
    [InlineData("(double X, double Y) p = (a.Feet, b.Meters); var l = Length.FromMeters({|MOM004:p.X|}); var k = Length.FromMeters(p.Y);")]
    [InlineData("double[] xs = { a.Feet, b.Feet }; var l = Length.FromMeters({|MOM004:xs[0]|});")]
    [InlineData("var xs = new double[3]; xs[0] = a.Feet; var l = Length.FromMeters({|MOM004:xs[1]|});")]
    [InlineData("var xs = new List<double>(); xs.Add(a.Feet); var l = Length.FromMeters({|MOM004:xs.Sum()|});")]
    [InlineData("var xs = new List<Length> { a, b }; var l = Length.FromMeters({|MOM004:xs.Select(v => v.Feet).Sum()|});")]
    [InlineData("var xs = new List<Length> { a, b }; var l = Length.FromMeters({|MOM004:xs.Sum(v => v.Feet)|});")]
    [InlineData("Func<double, double> half = v => v / 2; var l = Length.FromMeters({|MOM004:half(a.Feet)|});")]
    [InlineData("Func<double> read = () => a.Feet; var l = Length.FromMeters({|MOM004:read()|});")]
    [InlineData("double Twice(double v) => 2 * v; var l = Length.FromMeters({|MOM004:Twice(a.Feet)|});")]
    [InlineData("double x = a.Feet; void Store() { var l = Length.FromMeters({|MOM004:x|}); } Store();")]
    [InlineData("double? x = a.Feet; if (x is { } v) { var l = Length.FromMeters({|MOM004:x.Value|}); }")]
    [InlineData("float x = (float)a.Feet; var l = Length.FromMeters({|MOM004:(double)x|});")]
    [InlineData("int x = (int)a.Millimeters; var l = Length.FromMeters({|MOM004:x|});")]
    [InlineData("double x = a.Feet; try { x = b.Feet; } catch (Exception) { x = 0; } var l = Length.FromMeters({|MOM004:x|});")]
    [InlineData("double x = a.Feet; foreach (int i in new[] { 1, 2 }) { x += b.Feet; } var l = Length.FromMeters({|MOM004:x|});")]
    [InlineData("double x = a.Feet; x = x switch { > 3 => 3, _ => x }; var l = Length.FromMeters({|MOM004:x|});")]
    [InlineData("double x = a.Feet; var l = Length.FromMeters({|MOM004:Math.Abs(x)|});")]
    [InlineData("double area = a.Feet * b.Feet; var l = Length.FromMeters({|MOM005:Math.Sqrt(area)|});")]
    [InlineData("double w2 = w.RevolutionsPerMinute * w.RevolutionsPerMinute; var x = RotationalSpeed.FromRadiansPerSecond({|MOM008:Math.Sqrt(w2)|});")]
    [InlineData("var ts = TimeSpan.FromSeconds({|MOM004:time.Milliseconds|});")]
    [InlineData("var d = Duration.FromSeconds({|MOM004:TimeSpan.Zero.TotalMilliseconds|});")]
    [InlineData("System.Threading.Thread.Sleep({|MOM004:(int)time.Seconds|});")]
    [InlineData("var l = Length.FromMeters(b.Meters > 2 ? a.Meters : {|MOM004:b.Feet|});")]
    [InlineData("var l = Length.FromMeters((int)b.Meters switch { 1 => a.Meters, 2 => 3, _ => {|MOM004:b.Feet|} });")]
    [InlineData("double x = a.Meters + (b.Meters > 2 ? b.Meters : {|MOM001:b.Feet|});")]
    [InlineData("Length? c = a; double? x = c?.Feet; var l = Length.FromMeters({|MOM004:x ?? 0|});")]
    [InlineData("object o = a; if (o is Length { Feet: > 3 and var ft }) { var l = Length.FromMeters({|MOM004:ft|}); }")]
    [InlineData("bool x = a.Feet switch { var ft when ft > {|MOM002:b.Meters|} => true, _ => false };")]
    [InlineData("if ((a.Feet, time.Seconds) is var (ft, s) && s > 0) { var l = Length.FromMeters({|MOM004:ft|}); }")]
    [InlineData("Span<double> s = stackalloc double[3]; s[0] = a.Feet; var l = Length.FromMeters({|MOM004:s[1]|});")]
    [InlineData("Span<double> s = stackalloc double[] { a.Feet, b.Feet }; var l = Length.FromMeters({|MOM004:s[1]|});")]
    [InlineData("Span<double> s = stackalloc double[3]; s.Fill(a.Feet); var l = Length.FromMeters({|MOM004:s[0]|});")]
    [InlineData("var xs = new double[3]; Array.Fill(xs, a.Feet); var l = Length.FromMeters({|MOM004:xs[0]|});")]
    [InlineData("var xs = new Queue<double>(); xs.Enqueue(a.Feet); var l = Length.FromMeters({|MOM004:xs.Dequeue()|});")]
    [InlineData("var xs = new Stack<double>(); xs.Push(a.Feet); var l = Length.FromMeters({|MOM004:xs.Peek()|});")]
    [InlineData("var xs = new Dictionary<string, double>(); xs[\"a\"] = a.Feet; if (xs.TryGetValue(\"a\", out double v)) { var l = Length.FromMeters({|MOM004:v|}); }")]
    [InlineData("var xs = new Dictionary<string, double> { [\"a\"] = a.Feet }; foreach (var (k, v) in xs) { var l = Length.FromMeters({|MOM004:v|}); }")]
    [InlineData("var xs = new Dictionary<string, double> { [\"a\"] = a.Feet }; foreach (double v in xs.Values) { var l = Length.FromMeters({|MOM004:v|}); }")]
    [InlineData("double[] xs = { a.Feet, b.Feet }; foreach (double v in xs) { var l = Length.FromMeters({|MOM004:v|}); }")]
    [InlineData("var xs = new[] { a, b }; var l = Length.FromMeters({|MOM004:xs.Aggregate(0.0, (sum, v) => sum + v.Feet)|});")]
    [InlineData("var xs = new[] { a.Feet }; var ys = new[] { b.Feet }; var l = Length.FromMeters({|MOM004:xs.Zip(ys, (x, y) => x + y).First()|});")]
    [InlineData("var xs = new[] { angle }; var ys = {|MOM006:xs.Select(v => v.Degrees)|}.Select(Math.Sin).ToList();")]
    [InlineData("var xs = new[] { a }; foreach (var (x, n) in xs.Select(v => (v.Feet, 1))) { var l = Length.FromMeters({|MOM004:x|}); }")]
    [InlineData("var xs = new[] { a }; var l = Length.FromMeters({|MOM004:xs.Select(v => (v.Feet, 1)).Sum(p => p.Item1)|});")]
    [InlineData("var lazy = new Lazy<double>(() => a.Feet); var l = Length.FromMeters({|MOM004:lazy.Value|});")]
    [InlineData("var o = new { Span = a.Feet, Time = time.Seconds }; var l = Length.FromMeters({|MOM004:o.Span|}); var d = Duration.FromSeconds(o.Time);")]
    [InlineData("double text = $\"{Math.Sin({|MOM006:angle.Degrees|})}\".Length;")]
    public Task A_unit_is_followed_through_code(string body) => Check.Body(body);

    [Theory]
    [InlineData("double x = a.Feet; if (b.Meters > 2) { x = b.Meters; } var l = Length.FromMeters(x);")]
    [InlineData("double x = a.Feet; x = Other(); var l = Length.FromMeters(x); static double Other() => new Random().NextDouble();")]
    [InlineData("double x = a.Feet; Change(ref x); var l = Length.FromMeters(x); static void Change(ref double v) => v = 3;")]
    [InlineData("double[] xs = { a.Feet, time.Seconds }; var l = Length.FromMeters(xs[0]);")]
    [InlineData("var (x, y) = (a.Feet, b.Meters); (x, y) = (y, x); var l = Length.FromMeters(x);")]
    [InlineData("Func<double, double> half = v => v / 2; var l = Length.FromMeters(half(a.Meters)); var d = Duration.FromSeconds(half(time.Seconds));")]
    [InlineData("double p = 1; for (int i = 0; i < 3; i++) { p *= a.Meters; } var l = Length.FromMeters(p);")]
    [InlineData("double k = 250; var x = Force.FromNewtons(k * a.Meters);")]
    [InlineData("const double Stiffness = 250; var x = Force.FromNewtons(Stiffness * a.Meters);")]
    [InlineData("for (int i = 0; i < 10; i++) { var x = Duration.FromSeconds(i * time.Seconds); }")]
    [InlineData("var xs = new List<Length> { a, b }; double mean = xs.Sum(v => v.Meters) / xs.Count; var l = Length.FromMeters(mean);")]
    [InlineData("double x = a.Meters; string text = \"x = \" + x + \" m\"; text += x;")]
    [InlineData("double dt = time.Seconds / 100; double t0 = 0; while (t0 < time.Seconds) { t0 += dt; }")]
    [InlineData("double v = a.Meters / time.Seconds; double s = v * 2 + 0.5 * (v / time.Seconds) * 4; var x = Speed.FromMetersPerSecond(s);")]
    [InlineData("double sum = 0; foreach (var q in new[] { a, b }) { sum += q.Meters * q.Meters; } var l = Length.FromMeters(Math.Sqrt(sum / 2));")]
    [InlineData("double turns = angle.Radians / (2 * Math.PI); var x = Angle.FromRevolutions(turns);")]
    [InlineData("double phase = 2 * Math.PI * w.RevolutionsPerSecond * time.Seconds; double s = Math.Sin(phase);")]
    [InlineData("double rpm = w.RevolutionsPerMinute; double w0 = rpm * 2 * Math.PI / 60; var x = Energy.FromJoules(0.5 * inertia.KilogramSquareMeters * w0 * w0);")]
    [InlineData("double lbf = f.PoundsForce; double x = lbf * 4.4482216; var y = Force.FromNewtons(x);")]
    [InlineData("double x = f.Newtons / 9.80665; var y = Mass.FromKilograms(x);")]
    [InlineData("double ratio = a.Meters / b.Meters; var x = Angle.FromRadians(Math.Asin(ratio)); double d = 1 - ratio * ratio;")]
    [InlineData("bool metric = b.Meters > 2; bool x = (metric ? a.Meters : a.Feet) > (metric ? b.Meters : b.Feet);")]
    [InlineData("bool metric = b.Meters > 2; var l = Length.From(metric ? a.Meters : a.Feet, metric ? LengthUnit.Meter : LengthUnit.Foot);")]
    [InlineData("double score = 3 * a.Meters + 2 * time.Seconds;")]
    [InlineData("double turned = w.RadiansPerSecond * 2; double end = angle.Radians + turned;")]
    [InlineData("var xs = new Dictionary<string, double> { [\"a\"] = a.Feet, [\"t\"] = time.Seconds }; var l = Length.FromMeters(xs[\"a\"]);")]
    [InlineData("var xs = new[] { a.Feet, b.Feet }; var l = Length.FromMeters(xs.Count() + xs.Length);")]
    [InlineData("var ts = TimeSpan.FromMilliseconds(time.Seconds * 1000 + 50);")]
    [InlineData("var o = new { Span = a.Meters }; var l = Length.FromMeters(o.Span);")]
    [InlineData("Func<Func<double, double>, double, double> apply = (f, v) => f(v); var l = Length.FromMeters(apply(v => v, a.Meters));")]
    public Task What_is_not_known_stays_silent(string body) => Check.Body(body);

    [Fact]
    public Task A_function_that_is_handed_itself_ends() => Check.Members(
        """
        delegate double Self(Self self, double value);
        void Run(Length l) { Self s = (me, x) => me(me, x); _ = Length.FromMeters(s(s, l.Feet)); }
        """);

    [Fact]
    public Task Objects_that_cannot_change_keep_what_they_were_made_with() => Check.Members(
        """
        record Sample(double Span, double Time);
        readonly record struct Point(double X);
        class Kept { public Kept(double span) { Span = span; } public double Span { get; } }
        class Set { public double Span { get; init; } }
        class Open { public double Span { get; set; } }
        static double SpanOf(Sample s) => s.Span;
        static void Change(Open o) => o.Span = 3;

        void Run(Length l, Duration t)
        {
            var a = new Sample(l.Feet, t.Seconds);
            _ = Length.FromMeters({|MOM004:a.Span|});
            _ = Duration.FromSeconds(a.Time);
            _ = Length.FromMeters({|MOM004:SpanOf(a)|});
            _ = Length.FromMeters({|MOM004:new Point(l.Feet).X|});
            _ = Length.FromMeters({|MOM004:new Kept(l.Feet).Span|});
            var b = new Set { Span = l.Feet };
            _ = Length.FromMeters({|MOM004:b.Span|});
            var c = new Open();
            Change(c);
            _ = Length.FromMeters(c.Span);
        }
        """);

    [Fact]
    public Task Functions_are_called_with_what_they_are_handed() => Check.Members(
        """
        readonly Func<Angle, double> _read = a => a.Degrees;
        static double Apply(Func<double, double> f, double x) => f(x);
        static T Same<T>(T value) => value;
        static async System.Threading.Tasks.Task<double> Later(Length l) { await System.Threading.Tasks.Task.Yield(); return l.Feet; }
        static IEnumerable<double> Each(Length[] all) { foreach (Length l in all) yield return l.Feet; }

        async System.Threading.Tasks.Task Run(Length l, Angle a, Length[] all)
        {
            _ = Math.Sin({|MOM006:_read(a)|});
            _ = Length.FromMeters({|MOM004:Apply(v => 2 * v, l.Feet)|});
            _ = Length.FromMeters(Apply(v => 2 * v, l.Meters));
            _ = Length.FromMeters({|MOM004:Same(l.Feet)|});
            _ = Length.FromMeters({|MOM004:await Later(l).ConfigureAwait(false)|});
            foreach (double height in Each(all)) { _ = Length.FromMeters({|MOM004:height|}); }
        }
        """);

    [Fact]
    public Task What_a_field_is_set_to_says_more_than_what_is_added_to_it() => Check.Members(
        """
        private double _turned;
        private double _travelled;
        private readonly List<double> _heights = new();
        private static readonly double Bore = Length.FromInches(2).Centimeters;
        [Unit("mm")] private static readonly double Stated = {|MOM003:Length.FromInches(2).Centimeters|};
        [Unit("mm")] private double Also { get; } = {|MOM003:Length.FromInches(2).Centimeters|};

        void Start(Angle a) => _turned = a.Radians;
        void Turn(Angle a) => _turned += {|MOM001:a.Degrees|};
        void Move(Length l) => _travelled += l.Meters;
        void Note(Length l) => _heights.Add(l.Feet);
        void Run()
        {
            _ = Length.FromFeet({|MOM004:_travelled|});
            _ = Length.FromMeters({|MOM004:_heights[0]|});
            _ = Length.FromMeters({|MOM004:Bore|});
        }
        """);

    [Fact]
    public Task Code_says_more_of_a_unit_than_a_name() => Check.Members(
        """
        private readonly double _spanFeet;
        Craft(Length l) => _spanFeet = l.Feet;
        static double InFeet(Length l) => l.Feet;
        void Run(Length l) { _ = Length.FromMeters({|MOM004:InFeet(l)|}); _ = Length.FromMeters({|MOM004:_spanFeet|}); }
        """);

    [Fact]
    public Task Units_cross_methods() => Check.Members(
        """
        static double Height(Length l) => l.Feet;
        static double Square(double v) => v * v;
        static double Add(double x, double y) => x + y;
        static void Store(double v) => _ = Length.FromMeters(v);
        static void Deeper(double v) => Store(v);
        static (double Near, double Far) Both(Length l) { return (l.Feet, l.Meters); }
        static double[] Points(Length l) { return new[] { l.Feet, l.Feet }; }
        double Depth => Height(Length.Zero);

        void Run(Length l, RotationalSpeed w)
        {
            _ = Length.FromMeters({|MOM004:Height(l)|});
            _ = Length.FromFeet(Height(l));
            _ = Area.FromSquareMeters({|MOM005:Square(l.Feet)|});
            _ = Area.FromSquareMeters(Square(l.Meters));
            _ = Add(l.Meters, {|MOM004:l.Feet|});
            _ = Add(l.Meters, l.Meters);
            Store({|MOM004:l.Feet|});
            Store(l.Meters);
            Store(3);
            Deeper({|MOM004:l.Feet|});
            _ = Length.FromMeters({|MOM004:Both(l).Near|});
            _ = Length.FromMeters(Both(l).Far);
            _ = Length.FromMeters({|MOM004:Points(l)[1]|});
            _ = Length.FromMeters({|MOM004:Depth|});
        }
        """);

    [Fact]
    public Task A_literal_argument_is_neutral() => Check.Members(
        """
        static double Across(double outer, double inner, double height) => 3 * (outer * outer + inner * inner) + height * height;
        static double Diagonal(double x, double y) => Math.Sqrt(x * x + y * y);
        void Run(Length l) { _ = Across(l.Meters, 0, l.Meters); _ = Length.FromMeters(Diagonal(l.Meters, 2)); _ = Across(l.Meters, {|MOM005:l.Feet|}, 0); }
        """);

    [Fact]
    public Task Recursion_ends_and_is_silent_where_nothing_is_known() => Check.Members(
        """
        double Down(double v) => v > 1 ? Down(v / 2) : v;
        double Up(double v) => Other(v); double Other(double v) => Up(v);
        void Run(Length l)
        {
            _ = Length.FromMeters(Up(l.Feet));
            _ = Length.FromMeters(Down(l.Meters));
        }
        """);

    [Fact]
    public Task Fields_are_known_by_what_is_stored_in_them() => Check.Members(
        """
        private readonly double _height;
        private double _mixed;
        private readonly double[] _points = new double[2];
        private double Span { get; }

        Craft(Length l, bool metric) { _height = l.Feet; _mixed = metric ? l.Meters : l.Feet; _points[0] = l.Feet; }

        void Set(Length l) => _mixed = l.Meters;

        void Run()
        {
            _ = Length.FromMeters({|MOM004:_height|});
            _ = Length.FromMeters(_mixed);
            _ = Length.FromMeters({|MOM004:_points[1]|});
        }
        """);

    [Fact]
    public Task A_virtual_method_may_return_anything() => Check.Members(
        """
        protected virtual double Height(Length l) => l.Feet;
        void Run(Length l) => _ = Length.FromMeters(Height(l));
        """);

    [Theory]
    [InlineData("momentum_unit_call_depth", "0")]
    [InlineData("momentum_unit_flow_blocks", "0")]
    public Task Looking_into_calls_can_be_switched_off(string key, string value) => Check.Members(
        """
        static double Height(Length l) => l.Feet;
        void Run(Length l) => _ = Length.FromMeters(Height(l));
        """,
        (key, value));
}
