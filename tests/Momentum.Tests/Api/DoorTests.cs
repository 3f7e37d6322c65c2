using System.Collections;
using System.Globalization;
using System.Reflection;
using Momentum.Dispersion;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Motion;
using Momentum.Numerics;
using Momentum.Quantities;
using Momentum.Tests.Deployment;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Springs;
using UnitsNet;
using UnitsNet.Units;
using Xunit.Abstractions;

namespace Momentum.Tests.Api;

/// <summary>
/// Every public door, found by reflection, is given numbers that are none, infinite, tiny, huge, zero and negative, one
/// argument at a time: it refuses them with an exception of its own or gives figures, and comes to an end either way.
/// </summary>
/// <remarks>
/// Doors that are not called: those whose arguments are streams, spans or generic structures of the caller. Operators and the products
/// of <see cref="Vector{TQuantity, TFrame}"/> may overflow to what is not a number, as its documentation says; what they then give
/// is refused by the doors of computation, which is tested here by handing such vectors in.
/// </remarks>
public sealed class DoorTests(ITestOutputHelper output)
{
    // A door that takes a token is told to stop after this; the others must be done long before.
    private static readonly TimeSpan _patience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan _limit = TimeSpan.FromSeconds(90);

    private static readonly double[] _hostile = [double.NaN, double.PositiveInfinity, double.NegativeInfinity, 5e-324, -5e-324, 1e-310, 1e308, -1e308, 0, -1];

    private static readonly DespinHub _hub = new(
        MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRadiansPerSecond(7.5));

    private static readonly DespinDesign _design = _hub.Carrying(Mass.FromGrams(620), Length.FromMeters(1.9), LetGo.Radial);

    private static readonly SpringCordDesign _springs = _hub.CarryingOnSprings(
        Mass.FromGrams(620), Length.FromMeters(1.9), ForcePerLength.FromNewtonsPerMeter(900), LetGo.Tangent, 0.2);

    private static readonly CordDeployment _deployment = Invented.Deployment with { Until = Duration.FromSeconds(0.5) };

    private static readonly DeploymentResult _result = _deployment.Deploy();

    private static readonly DespinUncertainty _uncertainty = new() { InitialSpin = Scatter.Normal(RotationalSpeed.FromRadiansPerSecond(0.1)) };

    // What a door is opened with besides the number on trial, and the objects whose doors are tried.
    private static readonly object[] _known =
    [
        _hub, _design, _design.Deploy(), _springs, _springs.Deploy(), _deployment, _result, _result.FinalState, _uncertainty, Invented.Cord(0), LetGo.Radial,
        Invented.Stage(), Invented.Stage().Inertia, Invented.Stage().InertiaAbout(Position<Body>.Origin), Direction<Body>.ZAxis, Direction<Inertial>.XAxis,
        Rotation<Body, Inertial>.Identity, Position<Body>.Of(1, 2, 3, LengthUnit.Meter), Position<Inertial>.Origin,
        Vector<Length, Body>.FromSi(1, 2, 3), Vector<Force, Body>.FromSi(1, 2, 3), Vector<RotationalSpeed, Body>.FromSi(0.1, 0, 7), Vector<Speed, Inertial>.FromSi(1, 0, 0),
        Solid.Box(Mass.FromKilograms(1), Length.FromMeters(1), Length.FromMeters(2), Length.FromMeters(3)), Solid.Point(Mass.FromKilograms(1)),
        TorqueFreeMotion<Body>.From(Invented.Stage().Inertia, Vector<RotationalSpeed, Body>.FromSi(0.1, 0.2, 7), default),
        new DespinDispersion(_design, _uncertainty), new DespinDispersion(_design, _uncertainty).Run(50),
        new DespinDispersion(_design, _uncertainty).Run(50).FinalSpin, new DeploymentDispersion(_deployment with { Until = Duration.FromSeconds(2) }, _uncertainty),
        OdeTolerances.Of(1e-9, 1e-9), Scatter.Normal(Angle.FromDegrees(1)), new BenchRig(), new Assembly<Body>().Add("it", Solid.Sphere(Mass.FromKilograms(1), Length.FromMeters(1))),
        AngularMomentum.FromNewtonMeterSeconds(3), LinearMomentum.FromKilogramMetersPerSecond(2), Imbalance.FromKilogramMeters(1),
        default(ViscousSlug), new BodyState<Body>(default, default, Vector<RotationalSpeed, Body>.FromSi(0.1, 0, 7), default),
    ];

    [Fact]
    public void Every_door_refuses_what_it_cannot_use_and_gives_figures_for_the_rest()
    {
        List<string> wrong = [];
        int calls = 0;
        List<(MethodBase Door, object? On)> doors = [.. Doors()];
        Thread worker = new(() =>
        {
            foreach ((MethodBase door, object? on) in doors)
            {
                _now = $"{door.DeclaringType!.Name}.{door.Name}";
                try
                {
                    calls += Try(door, on, wrong);
                }
                catch (Exception unforeseen)
                {
                    wrong.Add($"{_now} cannot be tried: {unforeseen}");
                }
            }

            _now = null;
        })
        { IsBackground = true };
        worker.Start();
        string? before = "";
        while (!worker.Join(_limit))
        {
            Assert.True(before != _now, $"{_now} does not come to an end.");
            before = _now;
        }

        output.WriteLine($"{doors.Count} doors, {calls} calls");
        output.WriteLine(string.Join('\n', wrong.Distinct()));
        Assert.Empty(wrong);
        Assert.InRange(doors.Count, 200, 2000);
        Assert.InRange(calls, 2000, 200_000);
    }

    private static volatile string? _now;

    private static IEnumerable<(MethodBase Door, object? On)> Doors()
    {
        // The formulas of a Runge–Kutta method run inside the integrator, which refuses what they give.
        foreach (Type type in typeof(DespinHub).Assembly.GetExportedTypes().Where(type => !typeof(IRungeKuttaMethod).IsAssignableFrom(type)).SelectMany(Closed))
        {
            foreach (ConstructorInfo constructor in type.GetConstructors())
            {
                if (!typeof(Exception).IsAssignableFrom(type) && !typeof(Attribute).IsAssignableFrom(type) && !type.IsAbstract)
                {
                    yield return (constructor, null);
                }
            }

            foreach (MethodInfo method in type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly))
            {
                if (method.Name is "ToString" or "Equals" or "GetHashCode" or "Deconstruct" or "PrintMembers" || method.Name.StartsWith('<'))
                {
                    continue;
                }

                if (method.ReturnType.IsByRefLike || method.ReturnType.IsByRef)
                {
                    continue;
                }

                foreach (MethodInfo closed in ClosedMethod(method))
                {
                    if (closed.IsStatic)
                    {
                        yield return (closed, null);
                    }
                    else if (_known.FirstOrDefault(closed.DeclaringType!.IsInstanceOfType) is { } on)
                    {
                        yield return (closed, on);
                    }
                }
            }
        }
    }

    private static IEnumerable<Type> Closed(Type type)
    {
        if (!type.IsGenericTypeDefinition)
        {
            return [type];
        }

        // As those that are at hand are closed.
        return _known.Select(known => known.GetType()).Where(known => known.IsGenericType && known.GetGenericTypeDefinition() == type).Distinct();
    }

    private static IEnumerable<MethodInfo> ClosedMethod(MethodInfo method)
    {
        if (!method.IsGenericMethodDefinition)
        {
            return [method];
        }

        try
        {
            return [method.MakeGenericMethod([.. method.GetGenericArguments().Select(argument =>
                typeof(IFrame).IsAssignableFrom(argument.GetGenericParameterConstraints().FirstOrDefault(c => c == typeof(IFrame)) ?? typeof(object)) ? typeof(Body) : typeof(RotationalSpeed))])];
        }
        catch (ArgumentException)
        {
            return [];
        }
    }

    private static int Try(MethodBase door, object? on, List<string> wrong)
    {
        ParameterInfo[] parameters = door.GetParameters();
        object?[] usual = new object?[parameters.Length];
        for (int i = 0; i < parameters.Length; i++)
        {
            if (!Usual(parameters[i], out usual[i]))
            {
                return 0;
            }
        }

        int calls = 0;
        for (int i = 0; i < Math.Max(1, parameters.Length); i++)
        {
            foreach (object? hostile in parameters.Length == 0 ? [null] : Hostile(parameters[i].ParameterType))
            {
                object?[] arguments = [.. usual];
                if (parameters.Length > 0)
                {
                    arguments[i] = hostile;
                }

                calls++;
                Call(door, on, parameters, arguments, i, wrong);
            }
        }

        return calls;
    }

    private static void Call(MethodBase door, object? on, ParameterInfo[] parameters, object?[] arguments, int trial, List<string> wrong)
    {
        using CancellationTokenSource stop = new(_patience);
        for (int i = 0; i < parameters.Length; i++)
        {
            if (parameters[i].ParameterType == typeof(CancellationToken))
            {
                arguments[i] = stop.Token;
            }
        }

        string what = $"{door.DeclaringType!.Name}.{door.Name}({(parameters.Length > 0 ? $"{parameters[trial].Name}: {Text(arguments[trial])}" : "")})";
        object? given;
        try
        {
            given = door is ConstructorInfo constructor ? constructor.Invoke(arguments) : door.Invoke(on, arguments);
        }
        catch (TargetInvocationException thrown)
        {
            // UnitsNet keeps a power as a decimal, which overflows with an exception of its own.
            if (thrown.InnerException is OverflowException && door.DeclaringType.Name == "ScalarProducts")
            {
                return;
            }

            if (thrown.InnerException is not (ArgumentException or ComputationRefusedException or InvalidOperationException or NotSupportedException or OperationCanceledException or InvalidDataException))
            {
                wrong.Add($"{what} throws {thrown.InnerException!.GetType().Name}: {thrown.InnerException.Message}");
            }

            return;
        }

        bool mayOverflow = door.Name.StartsWith("op_", StringComparison.Ordinal) || door.Name == "Solve" || door.DeclaringType.Name is "VectorProducts" or "ScalarProducts" ||
            door.DeclaringType.Name.StartsWith("Vector`", StringComparison.Ordinal) || door.DeclaringType.Name.StartsWith("Position`", StringComparison.Ordinal) ||
            door.DeclaringType.Name.StartsWith("Rotation`", StringComparison.Ordinal);

        // A record is made of what it is given; what computes with it checks it, as a deployment is when it is deployed.
        string carried = door is ConstructorInfo && parameters.Length > 0 ? $", {parameters[trial].Name}" : "nothing";
        if (!mayOverflow && NotANumber(given, 0) is { } where && !where.StartsWith(carried, StringComparison.OrdinalIgnoreCase) && given is not CordDeployment)
        {
            wrong.Add($"{what} gives what is not a number{where}");
        }
    }

    // What a result shows of itself, some floors down.
    private static string? NotANumber(object? value, int depth)
    {
        switch (value)
        {
            case null or string or Type or bool or Enum or Delegate:
                return null;
            case double number:
                return double.IsNaN(number) ? "" : null;
            case IQuantity:
                return null;
            case IEnumerable many:
                return many.Cast<object?>().Take(3).Select(one => NotANumber(one, depth + 1)).FirstOrDefault(found => found is not null);
        }

        Type type = value.GetType();
        if (depth > 3 || type.Assembly != typeof(DespinHub).Assembly)
        {
            return null;
        }

        foreach (PropertyInfo property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance))
        {
            if (property.GetIndexParameters().Length > 0 || property.PropertyType.IsByRefLike || property.PropertyType.IsByRef)
            {
                continue;
            }

            try
            {
                if (NotANumber(property.GetValue(value), depth + 1) is { } found)
                {
                    return $", {property.Name}{found}";
                }
            }
            catch (TargetInvocationException thrown)
            {
                if (thrown.InnerException!.Message.Contains("NaN is not a valid number", StringComparison.Ordinal))
                {
                    return $", {property.Name}";
                }
            }
        }

        return null;
    }

    private static bool Usual(ParameterInfo parameter, out object? value)
    {
        Type type = parameter.ParameterType;
        value = null;
        if (parameter.HasDefaultValue && parameter.DefaultValue is not null)
        {
            value = parameter.DefaultValue;
            return true;
        }

        if (parameter.HasDefaultValue && Nullable.GetUnderlyingType(type) is null)
        {
            value = type.IsValueType ? Activator.CreateInstance(type) : null;
            return true;
        }

        type = Nullable.GetUnderlyingType(type) ?? type;
        type = type.IsByRef && !parameter.IsOut ? type.GetElementType()! : type;
        if (type.IsByRefLike || type.IsByRef || type.IsPointer || typeof(Stream).IsAssignableFrom(type) || type.ContainsGenericParameters)
        {
            return false;
        }

        if (type == typeof(double) || type == typeof(int) || type == typeof(long) || type == typeof(ulong))
        {
            value = Convert.ChangeType(2, type, CultureInfo.InvariantCulture);
            return true;
        }

        if (type == typeof(string))
        {
            value = "it";
            return true;
        }

        if (type == typeof(bool) || type.IsEnum || type == typeof(CancellationToken))
        {
            value = Activator.CreateInstance(type);
            return true;
        }

        if (typeof(IQuantity).IsAssignableFrom(type))
        {
            value = Quantity(type, 0.5);
            return true;
        }

        value = _known.FirstOrDefault(type.IsInstanceOfType);
        if (value is null && type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Vector<,>))
        {
            value = Made(type, 1, 2, 3);
        }

        return value is not null;
    }

    private static IEnumerable<object?> Hostile(Type declared)
    {
        Type type = Nullable.GetUnderlyingType(declared) ?? declared;
        type = type.IsByRef ? type.GetElementType()! : type;
        if (type == typeof(double))
        {
            return _hostile.Cast<object?>();
        }

        // Not the largest: as many as that are asked for in good faith, and take the memory they take.
        if (type == typeof(int) || type == typeof(long))
        {
            return new[] { 0L, -1, int.MinValue }.Select(n => (object?)Convert.ChangeType(n, type, CultureInfo.InvariantCulture));
        }

        if (typeof(IQuantity).IsAssignableFrom(type))
        {
            return _hostile.Where(double.IsFinite).Select(n => Quantity(type, n));
        }

        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Vector<,>))
        {
            return _hostile.Select(n => (object?)Made(type, n, 0.5 * n, n));
        }

        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Position<>))
        {
            Type vector = typeof(Vector<,>).MakeGenericType(typeof(Length), type.GetGenericArguments()[0]);
            object origin = Activator.CreateInstance(type)!;
            MethodInfo add = type.GetMethod("op_Addition", [type, vector])!;
            return _hostile.Select(n => add.Invoke(null, [origin, Made(vector, n, 0.5 * n, n)]));
        }

        return [type.IsValueType && Nullable.GetUnderlyingType(declared) is null ? Activator.CreateInstance(type) : null];
    }

    private static object Quantity(Type type, double number)
    {
        if (type.Assembly == typeof(DespinHub).Assembly)
        {
            throw new InvalidOperationException($"{type} is no quantity of UnitsNet.");
        }

        QuantityInfo info = UnitsNet.Quantity.Infos.Single(one => one.ValueType == type);
        return UnitsNet.Quantity.From(number, info.BaseUnitInfo.Value);
    }

    // Past the factories, which refuse what is not finite: as an overflow makes it.
    private static object Made(Type vector, double x, double y, double z) =>
        Activator.CreateInstance(vector, BindingFlags.NonPublic | BindingFlags.Instance, null, [x, y, z], CultureInfo.InvariantCulture)!;

    private static string Text(object? value) => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "null";
}
