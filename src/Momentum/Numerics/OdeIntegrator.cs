using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Momentum.Numerics;

/// <summary>
/// Integrates a system of ordinary differential equations step by step with an explicit Runge–Kutta method, controls the
/// error of each step, gives the solution anywhere within the last step, and locates events.
/// </summary>
/// <typeparam name="TSystem">The system, a struct.</typeparam>
/// <typeparam name="TEvents">The event functions, a struct; <see cref="NoEvents"/> if there are none.</typeparam>
/// <typeparam name="TMethod">
/// The method, a struct: <see cref="DormandPrince853"/> of order 8 for tight tolerances, <see cref="DormandPrince54"/> of order
/// 5 for loose ones, or one of your own.
/// </typeparam>
/// <remarks>
/// <para>
/// For problems that are not stiff.
/// </para>
/// <para>
/// All memory is taken when the integrator is made; starting, stepping and interpolating allocate nothing, so that one
/// integrator serves many runs. Not thread-safe: one integrator a thread. The result depends on nothing but the input:
/// the same bits come out whatever the thread, the culture or the width of the processor's vector unit.
/// </para>
/// <para>
/// Terminal events: the zero is bracketed and found on the dense output, then the step is repeated so that it ends
/// there, and its end is corrected until the event function of the repeated step vanishes to rounding. So the state at
/// a terminal event has the accuracy of a step, not of the dense output. Events that are not terminal are located on
/// the dense output. An event function that is zero at the start, to 1e-12 of its size at the first look, is no event
/// until it has left zero.
/// </para>
/// </remarks>
public sealed partial class OdeIntegrator<TSystem, TEvents, TMethod>
    where TSystem : struct, IOdeSystem
    where TEvents : struct, IEventFunctions
    where TMethod : struct, IRungeKuttaMethod
{
    // Gustafsson's proportional-integral step control (Hairer, Nørsett, Wanner, section IV.2 of the second volume): with an
    // error that falls with the power k of the step, new step = step · 0.9 · error^(1/64 - 1/k) · previous error^(1/32), within
    // these bounds. Exponents are whole numbers of 64ths.
    private const int MemoryExponent = 2;
    private const double Safety = 0.9;
    private const double LargestGrowth = 6.0;
    private const double SmallestShrink = 1.0 / 3.0;
    private const double SmallestRememberedError = 1e-4;

    // A step of so few roundings of the time is not the step that was meant.
    private const double SmallestStepInRoundings = 8.0;

    private readonly int _dimension;
    private readonly int _stride;
    private readonly double[] _work;
    private readonly double[] _absolute;
    private readonly double _relative;
    private readonly StepLimits _limits;

    private TSystem _system;
    private TEvents _events;

    private bool _started;
    private bool _denseReady;
    private int _stateRow = FirstStateRow;
    private int _previousRow = FirstStateRow + 1;
    private int _derivativeRow;
    private double _time;
    private double _previousTime;
    private double _nextStep;
    private double _rememberedError;
    private int _attempts;

    /// <summary>Makes an integrator and takes all the memory that it will use.</summary>
    /// <param name="system">The system; a copy is kept.</param>
    /// <param name="events">The event functions; a copy is kept.</param>
    /// <param name="tolerances">Tolerances, with one absolute tolerance, or as many as the system has components.</param>
    /// <param name="limits">Limits on the steps.</param>
    /// <exception cref="ArgumentException">The system has no components, or the number of tolerances does not fit.</exception>
    /// <exception cref="NotSupportedException">The tables of the method do not fit together.</exception>
    public OdeIntegrator(TSystem system, TEvents events, OdeTolerances tolerances, StepLimits limits = default)
    {
        ArgumentNullException.ThrowIfNull(tolerances);
        RequireSoundMethod();
        _dimension = system.Dimension;
        if (_dimension < 1)
        {
            throw new ArgumentException($"The system has {_dimension} components; it needs at least one.", nameof(system));
        }

        ReadOnlySpan<double> absolute = tolerances.Absolute;
        if (absolute.Length != 1 && absolute.Length != _dimension)
        {
            throw new ArgumentException($"There are {absolute.Length} absolute tolerances for {_dimension} components; give one for all, or one for each.", nameof(tolerances));
        }

        _system = system;
        _events = events;
        _limits = limits;
        _relative = tolerances.Relative;
        _absolute = new double[_dimension];
        for (int i = 0; i < _dimension; i++)
        {
            _absolute[i] = absolute[absolute.Length == 1 ? 0 : i];
        }

        // Rows are padded to whole vectors. Lanes never mix, so the width does not touch the result.
        int width = Vector<double>.Count;
        _stride = (_dimension + width - 1) / width * width;
        _work = new double[RowCount * _stride];
        PrepareEvents();
    }

    /// <summary>The system. After changing its parameters, call <see cref="Start"/> before stepping or interpolating.</summary>
    public ref TSystem System
    {
        get { return ref _system; }
    }

    /// <summary>The event functions. After changing their parameters, call <see cref="Start"/> before stepping.</summary>
    public ref TEvents EventFunctions
    {
        get { return ref _events; }
    }

    /// <summary>Time of the current state; the end of the last step.</summary>
    public double Time
    {
        get { return _time; }
    }

    /// <summary>Time at which the last step began; equal to <see cref="Time"/> after <see cref="Start"/>.</summary>
    public double PreviousTime
    {
        get { return _previousTime; }
    }

    /// <summary>The current state; a view that the next step overwrites.</summary>
    public ReadOnlySpan<double> State
    {
        get { return Row(_stateRow); }
    }

    /// <summary>The derivatives of the current state; a view that the next step overwrites.</summary>
    public ReadOnlySpan<double> Derivatives
    {
        get { return Row(_derivativeRow); }
    }

    /// <summary>Number of accepted steps since the start.</summary>
    public int AcceptedSteps { get; private set; }

    /// <summary>Number of rejected steps since the start.</summary>
    public int RejectedSteps { get; private set; }

    /// <summary>Number of evaluations of the system since the start.</summary>
    public long Evaluations { get; private set; }

    /// <summary>Sets time and state, and forgets everything before them.</summary>
    /// <param name="time">The time to start from, finite.</param>
    /// <param name="state">The state at that time; as long as the system has components, all finite.</param>
    /// <exception cref="ArgumentException">The state is of the wrong length, or a number is not finite.</exception>
    /// <exception cref="IntegrationRefusedException">The derivatives at the start are not finite.</exception>
    public void Start(double time, ReadOnlySpan<double> state)
    {
        if (!double.IsFinite(time))
        {
            throw new ArgumentOutOfRangeException(nameof(time), time, "The time to start from must be finite.");
        }

        if (state.Length != _dimension)
        {
            throw new ArgumentException($"The state has {state.Length} components; the system has {_dimension}.", nameof(state));
        }

        for (int i = 0; i < _dimension; i++)
        {
            if (!double.IsFinite(state[i]))
            {
                throw new ArgumentException(FormattableString.Invariant($"Component {i} of the state is {state[i]}; it must be finite."), nameof(state));
            }
        }

        _started = false;
        _time = time;
        _previousTime = time;
        state.CopyTo(Row(_stateRow));
        AcceptedSteps = 0;
        RejectedSteps = 0;
        Evaluations = 0;
        _attempts = 0;
        _nextStep = 0.0;
        _rememberedError = SmallestRememberedError;
        _denseReady = false;
        _derivativeRow = 0;
        Evaluate(time, _stateRow, 0);
        if (!IsFinite(0))
        {
            throw new IntegrationRefusedException(IntegrationRefusal.NotFinite, time, "the derivatives at the start are not finite numbers. Check the initial state and the parameters of the system.");
        }

        StartEvents();
        _started = true;
    }

    /// <summary>Makes one step towards the end time, which is met exactly.</summary>
    /// <param name="endTime">Where to stop, finite; may lie before the current time, then the integration runs backward.</param>
    /// <returns>Whether the step ended at a terminal event, at the end time, or before it. No step is made at the end time.</returns>
    /// <exception cref="InvalidOperationException">The integration was not started.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The end time is not finite.</exception>
    /// <exception cref="IntegrationRefusedException">The integration cannot go on; the last accepted state stays.</exception>
    public StepResult Step(double endTime)
    {
        RequireStart();
        if (!double.IsFinite(endTime))
        {
            throw new ArgumentOutOfRangeException(nameof(endTime), endTime, "The end time must be finite.");
        }

        ClearEvents();
        if (endTime == _time)
        {
            return StepResult.EndReached;
        }

        if (_derivativeRow != 0)
        {
            Row(_derivativeRow).CopyTo(Row(0));
            _derivativeRow = 0;
        }

        _denseReady = false;
        double newTime = TakeStep(endTime);

        // The new state stands in what was the row of the previous one.
        (_stateRow, _previousRow) = (_previousRow, _stateRow);
        _derivativeRow = EndDerivativeRow;
        _previousTime = _time;
        _time = newTime;
        AcceptedSteps++;
        if (_eventCount > 0 && FindEvents())
        {
            return StepResult.EventReached;
        }

        return _time == endTime ? StepResult.EndReached : StepResult.StepTaken;
    }

    /// <summary>Steps until the end time or a terminal event. Events that are not terminal are passed over: to see them, use <see cref="Step"/>.</summary>
    /// <param name="endTime">Where to stop, finite.</param>
    /// <param name="cancellation">Ends the run early, between two steps; the last accepted state stays.</param>
    /// <returns><see cref="StepResult.EndReached"/> or <see cref="StepResult.EventReached"/>.</returns>
    /// <exception cref="InvalidOperationException">The integration was not started.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The end time is not finite.</exception>
    /// <exception cref="IntegrationRefusedException">The integration cannot go on; the last accepted state stays.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public StepResult Run(double endTime, CancellationToken cancellation = default)
    {
        StepResult result;
        do
        {
            cancellation.ThrowIfCancellationRequested();
            result = Step(endTime);
        }
        while (result == StepResult.StepTaken);

        return result;
    }

    /// <summary>The state at a time within the last step, by the dense output of the method; exact at the two ends.</summary>
    /// <param name="time">From <see cref="PreviousTime"/> to <see cref="Time"/>.</param>
    /// <param name="state">Receives the state; as long as the system has components.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the last step.</exception>
    /// <exception cref="ArgumentException">The destination is of the wrong length.</exception>
    public void Interpolate(double time, Span<double> state)
    {
        RequireStart();
        if (state.Length != _dimension)
        {
            throw new ArgumentException($"The destination has {state.Length} elements; the system has {_dimension} components.", nameof(state));
        }

        bool within = _previousTime <= _time ? time >= _previousTime && time <= _time : time >= _time && time <= _previousTime;
        if (!within)
        {
            throw new ArgumentOutOfRangeException(nameof(time), time, FormattableString.Invariant($"The last step covers the times from {_previousTime:R} to {_time:R}."));
        }

        if (time == _time)
        {
            Row(_stateRow).CopyTo(state);
            return;
        }

        if (time == _previousTime)
        {
            Row(_previousRow).CopyTo(state);
            return;
        }

        PrepareDenseOutput();
        EvaluateDenseOutput((time - _previousTime) / (_time - _previousTime));
        Row(StageStateRow).CopyTo(state);
    }

    private void RequireStart()
    {
        if (!_started)
        {
            throw new InvalidOperationException("The integration was not started: call Start first.");
        }
    }

    /// <summary>Tries steps until one is accepted; its state is then in the row of the previous state. Returns the new time.</summary>
    private double TakeStep(double endTime)
    {
        double remaining = endTime - _time;
        if (_nextStep == 0.0)
        {
            _nextStep = Math.Min(_limits.FirstStep > 0.0 ? _limits.FirstStep : GuessFirstStep(remaining), _limits.MaximumStep);
        }

        bool rejected = false;
        bool finite = true;
        while (true)
        {
            if (_attempts >= _limits.MaximumSteps)
            {
                throw new IntegrationRefusedException(IntegrationRefusal.TooManySteps, _time, FormattableString.Invariant($"{_limits.MaximumSteps} steps were not enough. Allow more steps, loosen the tolerances, or check the system for stiffness."));
            }

            _attempts++;
            bool last = 1.01 * _nextStep >= Math.Abs(remaining);
            double newTime = last ? endTime : _time + Math.CopySign(_nextStep, remaining);
            double step = newTime - _time;
            if (step == 0.0 || (!last && _nextStep <= SmallestStepInRoundings * RelativeRounding * Math.Abs(_time)))
            {
                throw finite
                    ? new IntegrationRefusedException(IntegrationRefusal.StepTooSmall, _time, "the tolerances ask for a step below the resolution of the time. The solution may be singular here, or the tolerances too tight.")
                    : new IntegrationRefusedException(IntegrationRefusal.NotFinite, _time, "the system gives numbers that are not finite, however short the step. The solution may be singular here, or leave the domain of the system.");
            }

            ComputeStages(_time, step, _stateRow, _previousRow);
            if (_endEntersError)
            {
                Evaluate(newTime, _previousRow, EndDerivativeRow);
            }

            double error = ErrorOf(step);
            if (error <= 1.0)
            {
                if (!_endEntersError)
                {
                    Evaluate(newTime, _previousRow, EndDerivativeRow);
                }

                if (!IsFinite(EndDerivativeRow))
                {
                    error = double.NaN;
                }
            }

            if (error <= 1.0)
            {
                double growth = Growth(error);
                double next = Math.Abs(step) * (rejected ? Math.Min(growth, 1.0) : growth);

                // A step cut short by the end time says little about the longest one possible.
                _nextStep = Math.Min(last ? Math.Max(next, _nextStep) : next, _limits.MaximumStep);
                _rememberedError = Math.Max(error, SmallestRememberedError);
                return newTime;
            }

            RejectedSteps++;
            rejected = true;
            finite = !double.IsNaN(error);
            double shrink = finite ? Math.Max(SmallestShrink, Safety / Power(error, RootExponent)) : 0.1;
            _nextStep = Math.Abs(step) * Math.Min(shrink, 0.95);
        }
    }

    private double Growth(double error)
    {
        if (error == 0.0)
        {
            return LargestGrowth;
        }

        double next = Safety * Power(_rememberedError, MemoryExponent) / Power(error, RootExponent - 1);
        return Math.Clamp(next, SmallestShrink, LargestGrowth);
    }

    /// <summary>
    /// The power of a number to so many 64ths, by repeated square roots: those are correctly rounded on every machine, so that
    /// the steps are the same too.
    /// </summary>
    private static double Power(double value, int exponent)
    {
        double power = 1.0;
        double root = value;
        for (int left = exponent & 63; left != 0; left = (left << 1) & 63)
        {
            root = Math.Sqrt(root);
            if ((left & 32) != 0)
            {
                power *= root;
            }
        }

        return power;
    }

    /// <summary>First step by the rule of Hairer, Nørsett and Wanner, section II.4.</summary>
    private double GuessFirstStep(double remaining)
    {
        ReadOnlySpan<double> state = Row(_stateRow);
        ReadOnlySpan<double> slope = Row(0);
        double sizeOfState = 0.0;
        double sizeOfSlope = 0.0;
        for (int i = 0; i < _dimension; i++)
        {
            double scale = _absolute[i] + (_relative * Math.Abs(state[i]));
            sizeOfState += state[i] / scale * (state[i] / scale);
            sizeOfSlope += slope[i] / scale * (slope[i] / scale);
        }

        double guess = sizeOfState <= 1e-10 || sizeOfSlope <= 1e-10 ? 1e-6 : 0.01 * Math.Sqrt(sizeOfState / sizeOfSlope);
        guess = Math.Min(Math.Min(guess, Math.Abs(remaining)), _limits.MaximumStep);
        double step = Math.CopySign(guess, remaining);
        Span<double> trial = Row(StageStateRow);
        for (int i = 0; i < _dimension; i++)
        {
            trial[i] = state[i] + (step * slope[i]);
        }

        Evaluate(_time + step, StageStateRow, 1);
        ReadOnlySpan<double> trialSlope = Row(1);
        double curvature = 0.0;
        for (int i = 0; i < _dimension; i++)
        {
            double scale = _absolute[i] + (_relative * Math.Abs(state[i]));
            double change = (trialSlope[i] - slope[i]) / scale;
            curvature += change * change;
        }

        double largest = Math.Max(Math.Sqrt(curvature) / guess, Math.Sqrt(sizeOfSlope));
        double second = largest <= 1e-15 ? Math.Max(1e-6, guess * 1e-3) : Power(0.01 / largest, RootExponent);
        double first = Math.Min(100.0 * guess, second);

        // A trial slope that is not finite says nothing; the step control will find its way from the guess.
        return double.IsFinite(first) && first > 0.0 ? Math.Min(first, Math.Abs(remaining)) : guess;
    }

    /// <summary>The stages of a step, and the state at its end.</summary>
    private void ComputeStages(double time, double step, int fromRow, int toRow)
    {
        ReadOnlySpan<double> nodes = TMethod.Nodes;
        for (int stage = 1; stage < TMethod.StageCount; stage++)
        {
            Advance(stage, step, fromRow, StageStateRow);
            Evaluate(time + (nodes[stage] * step), StageStateRow, stage);
        }

        Advance(TMethod.StageCount, step, fromRow, toRow);
    }

    /// <summary>The method's measure of the error; above 1 is too much, NaN if a number is not finite.</summary>
    private double ErrorOf(double step)
    {
        Sum(TMethod.ErrorWeights, TMethod.ErrorStages, ErrorRow);
        if (_hasSecondError)
        {
            Sum(TMethod.SecondErrorWeights, TMethod.SecondErrorStages, SecondErrorRow);
        }

        ReadOnlySpan<double> before = Row(_stateRow);
        ReadOnlySpan<double> after = Row(_previousRow);
        ReadOnlySpan<double> error = Row(ErrorRow);
        ReadOnlySpan<double> secondError = Row(SecondErrorRow);
        double sum = 0.0;
        double secondSum = 0.0;
        double stateSum = 0.0;
        for (int i = 0; i < before.Length; i++)
        {
            double size = Math.Max(Math.Abs(before[i]), Math.Abs(after[i]));
            double perScale = 1.0 / (_absolute[i] + (_relative * size));
            double a = error[i] * perScale;
            sum += a * a;
            if (_hasSecondError)
            {
                double b = secondError[i] * perScale;
                secondSum += b * b;
            }

            stateSum += size;
        }

        return double.IsFinite(stateSum) ? TMethod.ErrorMeasure(Math.Abs(step), _dimension, sum, secondSum) : double.NaN;
    }

    /// <summary>The coefficients of the dense output of the last step, and the stages that only they need, once a step.</summary>
    private void PrepareDenseOutput()
    {
        if (_denseReady)
        {
            return;
        }

        double step = _time - _previousTime;
        for (int stage = EndDerivativeRow + 1; stage < TMethod.ExtendedStageCount; stage++)
        {
            Advance(stage, step, _previousRow, StageStateRow);
            Evaluate(_previousTime + (TMethod.Nodes[stage] * step), StageStateRow, stage);
        }

        ReadOnlySpan<double> before = Row(_previousRow);
        ReadOnlySpan<double> after = Row(_stateRow);
        ReadOnlySpan<double> slopeBefore = Row(0);
        ReadOnlySpan<double> slopeAfter = Row(EndDerivativeRow);
        Span<double> first = Row(DenseRow);
        Span<double> second = Row(DenseRow + 1);
        Span<double> third = Row(DenseRow + 2);
        for (int i = 0; i < before.Length; i++)
        {
            double change = after[i] - before[i];
            first[i] = change;
            second[i] = (step * slopeBefore[i]) - change;
            third[i] = change - (step * slopeAfter[i]) - second[i];
        }

        ReadOnlySpan<byte> rowStart = TMethod.DenseRowStart;
        for (int row = 0; row < rowStart.Length - 1; row++)
        {
            Range range = rowStart[row]..rowStart[row + 1];
            int target = DenseRow + HermiteRows + row;
            Sum(TMethod.DenseWeights[range], TMethod.DenseStages[range], target);
            foreach (ref double value in Row(target))
            {
                value *= step;
            }
        }

        _denseReady = true;
    }

    /// <summary>The dense output at a fraction of the step, into the row of the stage state.</summary>
    private void EvaluateDenseOutput(double fraction)
    {
        // Coefficients at even places are multiplied by the fraction, the others by what is left of the step.
        Vector<double> even = new(fraction);
        Vector<double> odd = new(1.0 - fraction);
        ref double work = ref MemoryMarshal.GetArrayDataReference(_work);
        for (int i = 0; i < _stride; i += Vector<double>.Count)
        {
            Vector<double> sum = Load(ref work, DenseRow + DenseRows - 1, i) * ((DenseRows & 1) == 0 ? odd : even);
            for (int row = DenseRows - 2; row >= 0; row--)
            {
                sum = (sum + Load(ref work, DenseRow + row, i)) * ((row & 1) == 0 ? even : odd);
            }

            (sum + Load(ref work, _previousRow, i)).StoreUnsafe(ref work, (nuint)((StageStateRow * _stride) + i));
        }
    }

    private void Evaluate(double time, int stateRow, int derivativeRow)
    {
        Evaluations++;
        _system.Derivatives(time, Row(stateRow), Row(derivativeRow));
    }

    /// <summary>state(to) = state(from) + step · sum of the weighted stages of one row of the method.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Advance(int methodRow, double step, int fromRow, int toRow)
    {
        ReadOnlySpan<byte> rowStart = TMethod.RowStart;
        Range range = rowStart[methodRow]..rowStart[methodRow + 1];
        ReadOnlySpan<double> weights = TMethod.Weights[range];
        ReadOnlySpan<byte> stages = TMethod.Stages[range];
        ref double work = ref MemoryMarshal.GetArrayDataReference(_work);
        Vector<double> length = new(step);
        for (int i = 0; i < _stride; i += Vector<double>.Count)
        {
            Vector<double> sum = WeightedSum(ref work, weights, stages, i);
            Vector.FusedMultiplyAdd(length, sum, Load(ref work, fromRow, i)).StoreUnsafe(ref work, (nuint)((toRow * _stride) + i));
        }
    }

    private void Sum(ReadOnlySpan<double> weights, ReadOnlySpan<byte> stages, int toRow)
    {
        ref double work = ref MemoryMarshal.GetArrayDataReference(_work);
        for (int i = 0; i < _stride; i += Vector<double>.Count)
        {
            WeightedSum(ref work, weights, stages, i).StoreUnsafe(ref work, (nuint)((toRow * _stride) + i));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector<double> WeightedSum(ref double work, ReadOnlySpan<double> weights, ReadOnlySpan<byte> stages, int offset)
    {
        Vector<double> sum = Vector<double>.Zero;
        for (int j = 0; j < weights.Length && j < stages.Length; j++)
        {
            // A fused multiply-add by name: rounded once on every machine, not at the compiler's discretion.
            sum = Vector.FusedMultiplyAdd(new Vector<double>(weights[j]), Load(ref work, stages[j], offset), sum);
        }

        return sum;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector<double> Load(ref double work, int row, int offset)
    {
        return Vector.LoadUnsafe(ref work, (nuint)((row * _stride) + offset));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Span<double> Row(int row)
    {
        return _work.AsSpan(row * _stride, _dimension);
    }

    private bool IsFinite(int row)
    {
        foreach (double value in Row(row))
        {
            if (!double.IsFinite(value))
            {
                return false;
            }
        }

        return true;
    }
}
