using Momentum.Numerics;

namespace Momentum.Tethers.Springs;

/// <summary>What ends a phase of a spring cord's motion, and what is worth noting on the way.</summary>
internal struct SpringCordEvents : IEventFunctions
{
    internal const int End = 0;
    internal const int Slack = 1;
    internal const int Rewound = 2;
    internal const int LetGo = 3;
    internal const int TensionPeak = 4;
    internal const int StretchPeak = 5;
    private const int All = 6;

    /// <summary>The equations in their present phase.</summary>
    internal SpringCordEquations Cords { get; set; }

    /// <summary>The unwound or cord angle at which the phase ends.</summary>
    internal double Swept { get; set; }

    /// <summary>What is added to the swept angle for the cord angle of the let-go rule: minus the whole winding while unwinding.</summary>
    internal double Offset { get; set; }

    /// <summary>The let-go rule.</summary>
    internal LetGoRule Awaited { get; set; }

    /// <summary>Whether peaks are looked for.</summary>
    internal bool Watching { get; init; }

    public readonly int Count => Watching ? All : TensionPeak;

    public readonly EventRule Rule(int index) =>
        new(index is End or LetGo ? EventDirection.Rising : EventDirection.Falling, IsTerminal: index < TensionPeak);

    public readonly void Evaluate(double time, ReadOnlySpan<double> state, Span<double> values)
    {
        SpringCordEquations.Glance now = Cords.Look(state);
        values[End] = state[SpringCordEquations.Swept] - Swept;
        values[Slack] = now.Tension;
        values[Rewound] = state[SpringCordEquations.Swept];
        values[LetGo] = Awaited.Condition(time, state[SpringCordEquations.Spin], state[SpringCordEquations.Swept] + Offset);
        if (values.Length > TensionPeak)
        {
            values[TensionPeak] = Cords.TensionRate(state, now);
            values[StretchPeak] = now.StretchRate;
        }
    }
}
