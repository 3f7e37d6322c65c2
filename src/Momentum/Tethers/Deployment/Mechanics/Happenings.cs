using System.Globalization;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>What came to pass in a run, and what the ledger must know of it.</summary>
internal sealed class Happenings(Mechanism mechanism)
{
    private const int Most = 4096;

    private readonly List<Incident> _incidents = [];
    private readonly Departure[] _departures = new Departure[mechanism.CordCount];
    private Balance _carried;

    public IReadOnlyList<Incident> Incidents => _incidents;

    /// <summary>How the weight of each cord left; of no meaning where it did not.</summary>
    public ReadOnlySpan<Departure> Departures => _departures;

    /// <summary>What the departed cords and weights took with them.</summary>
    public Balance Carried => _carried;

    /// <summary>Energy lost in impulses.</summary>
    public double ImpactLoss { get; private set; }

    /// <summary>Whether one of them ends the computation.</summary>
    public bool Ended { get; private set; }

    public void Clear()
    {
        _incidents.Clear();
        Array.Clear(_departures);
        _carried = default;
        ImpactLoss = 0;
        Ended = false;
    }

    /// <summary>Notes an event.</summary>
    /// <param name="kind">What happened.</param>
    /// <param name="time">When.</param>
    /// <param name="cord">Index of the cord; −1 if it concerns the hub.</param>
    /// <param name="lost">Energy that an impulse took.</param>
    /// <exception cref="DeploymentRefusedException">There are too many.</exception>
    public void Note(DeploymentEventKind kind, double time, int cord, double lost = 0)
    {
        if (_incidents.Count >= Most)
        {
            throw new DeploymentRefusedException(string.Create(
                CultureInfo.InvariantCulture,
                $"More than {Most} events: a cord chatters between slack and taut. Give the cord elasticity and damping, or a later start of winding."));
        }

        ImpactLoss += lost;
        _incidents.Add(new Incident(kind, time, cord, lost));
    }

    /// <summary>Notes an event that ends the computation.</summary>
    public void NoteLast(DeploymentEventKind kind, double time, int cord)
    {
        Note(kind, time, cord);
        Ended = true;
    }

    /// <summary>Notes that a cord has let go, how its weight left, and what left with it.</summary>
    public void NoteLetGo(int cord, Departure departure, in Balance carried)
    {
        _departures[cord] = departure;
        _carried.Linear += carried.Linear;
        _carried.Angular += carried.Angular;
        _carried.Weights += carried.Weights;
        _carried.Cords += carried.Cords;
        _carried.Elastic += carried.Elastic;
        _carried.Gravity += carried.Gravity;
        Note(DeploymentEventKind.LetGo, departure.Time, cord);
    }
}

/// <summary>Place and velocity of a weight as its cord lets go, inertial, and when.</summary>
internal readonly record struct Departure(Vec Position, Vec Velocity, double Time);
