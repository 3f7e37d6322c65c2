using Momentum.Numerics;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Deployment.Mechanics;
using Xunit.Abstractions;

namespace Momentum.Tests.Deployment;

/// <summary>The deployment against an independent formulation of the same physics, in random asymmetric cases without slack.</summary>
public class IndependentFormulationTests(ITestOutputHelper output)
{
    // Both integrate with local errors of 1e-12 or less a step over some hundred steps; 1e-8 is what the agreement is
    // promised to, the largest seen is printed.
    private const double Promised = 1e-8;

    // Unwound angle past which the lump of a heavy cord is compared: the other formulation has a square root of what is
    // left between lump and drum, and at the very start no digits in it.
    private const double ClearOfDrum = 0.03;

    public enum Kind
    {
        Grooved,
        Smooth,
        Elastic,
        Rubbing,
        Massive,
        MassiveElastic,
    }

    [Theory]
    [InlineData(Kind.Grooved, 50)]
    [InlineData(Kind.Smooth, 25)]
    [InlineData(Kind.Elastic, 20)]
    [InlineData(Kind.Rubbing, 20)]
    [InlineData(Kind.Massive, 15)]
    [InlineData(Kind.MassiveElastic, 10)]
    public void Random_asymmetric_deployments_agree_to_the_promised_digits(Kind kind, int cases)
    {
        Random random = new(20261125 + (int)kind);
        int compared = 0;
        double worst = 0;
        for (int trial = 0; compared < cases; trial++)
        {
            Assert.True(trial < 400, "Too few of the random cases are free of slack.");
            Case one = new(random, kind);
            double? difference = kind is Kind.Massive or Kind.MassiveElastic ? one.PhaseByPhase() : one.Whole();
            if (difference is { } d)
            {
                compared++;
                worst = Math.Max(worst, d);
                Assert.True(d < Promised, FormattableString.Invariant($"case {trial}: difference {d:E2}"));
            }
        }

        output.WriteLine(FormattableString.Invariant($"{kind}: largest difference of {compared} cases {worst:E1}"));
    }

    /// <summary>A hub with full tensor, offset centre of mass and wobble; one, two or four cords, of which no two are alike.</summary>
    private sealed class Case
    {
        private readonly HubConstants _hub;
        private readonly CordConstants[] _cords;
        private readonly double _radius;
        private readonly Vec _rates;

        public Case(Random random, Kind kind)
        {
            double Between(double a, double b) => a + ((b - a) * random.NextDouble());
            _radius = Between(0.3, 1.2);
            double mass = Between(50, 400);
            double xx = mass * _radius * _radius * Between(0.3, 1.5);
            double yy = xx * Between(0.8, 1.25);
            double zz = Between(0.5, 0.9) * (xx + yy);
            _hub = new HubConstants
            {
                Mass = mass,
                Inertia = new Tensor(xx, yy, zz, 0.03 * xx * Between(-1, 1), 0.03 * xx * Between(-1, 1), 0.03 * xx * Between(-1, 1)),
                Centre = new Vec(_radius * Between(-0.02, 0.02), _radius * Between(-0.02, 0.02), _radius * Between(-0.3, 0.3)),
            };
            double spin = Between(3, 10);
            _rates = new Vec(spin * Between(-0.03, 0.03), spin * Between(-0.03, 0.03), spin);
            bool heavy = kind is Kind.Massive or Kind.MassiveElastic;
            bool elastic = kind is Kind.Elastic or Kind.MassiveElastic;
            int count = random.Next(3) switch { 0 => 1, 1 => 2, _ => heavy ? 3 : 4 };
            _cords = new CordConstants[count];
            for (int i = 0; i < count; i++)
            {
                double weight = mass * Between(0.003, 0.02);
                double length = _radius * Between(1.5, 4);

                // Stretched by a tenth to a hundredth of its length at the largest tension.
                double stiffness = weight * length * spin * spin * Between(40, 400);
                _cords[i] = new CordConstants
                {
                    Weight = weight,
                    Length = length,
                    FreeAtStart = _radius * Between(0.15, 0.3),
                    Radius = _radius,
                    Height = _radius * Between(-0.1, 0.1),
                    StartAngle = (2 * Math.PI * i / count) + Between(-0.1, 0.1),
                    LetGo = new LetGoRule(LetGoKind.CordAngle, Between(0.4, 1.6), 0),
                    Smooth = kind == Kind.Smooth || (!heavy && kind != Kind.Grooved && random.Next(2) == 0),
                    Stiffness = elastic ? stiffness : 0,
                    DampingRatio = elastic ? Between(0.02, 0.3) : 0,
                    Friction = kind == Kind.Rubbing ? Between(0.02, 0.2) : 0,
                    FrictionSpeed = 1e-3 * _radius * spin,
                    LineDensity = heavy ? weight / length * Between(0.02, 0.5) : 0,
                    Segments = heavy ? random.Next(2, 5) : 1,
                };
            }
        }

        private double Spin => _rates.Z;

        private double End => 14 / Spin;

        /// <summary>From the start to well after the last release, in one; null if a cord was slack.</summary>
        public double? Whole()
        {
            Propagation ours = Run(null);
            if (WasSlack(ours))
            {
                return null;
            }

            CartesianModel model = new(_hub, [.. _cords.Select((_, i) => Particle(i, 0))]);
            double[] state = model.Run(model.Start(_rates, [.. _cords.Select(c => c.FreeAtStart)]), End);

            double worst = HubDifference(ours.State, _hub.Centre, state);
            for (int i = 0; i < _cords.Length; i++)
            {
                (Vec at, Vec velocity, double time) = ours.Departures[i];
                if (time > 0)
                {
                    Vec now = at + ((End - time) * velocity);
                    worst = Math.Max(worst, (now - Vec.Read(state.AsSpan(18 + (6 * i)))).Length / _radius);
                }
            }

            return worst;
        }

        /// <summary>
        /// Each phase for itself, from where the lump that left the drum last is clear of it to the next event: what still
        /// is wound up belongs to the hub of the other formulation. Null if a cord was slack.
        /// </summary>
        public double? PhaseByPhase()
        {
            Mechanism mechanism = new(_hub, _cords);
            Recording recording = new(mechanism.Dimension);
            if (WasSlack(Run(recording)))
            {
                return null;
            }

            double worst = 0;
            int from = 0;
            while (from < recording.Count)
            {
                int segment = recording.SegmentOf(from);
                int to = from;
                while (to + 1 < recording.Count && recording.SegmentOf(to + 1) == segment)
                {
                    to++;
                }

                (LinkPhase[] phases, double sign) = recording.Segment(segment);
                mechanism.TakePhases(phases, sign);
                int first = from;
                while (first < to && !IsClear(mechanism, recording.State(first)))
                {
                    first++;
                }

                if (first < to && phases.Any(p => p.Chart is not (Chart.Held or Chart.Gone)))
                {
                    worst = Math.Max(worst, Phase(mechanism, recording, first, to));
                }

                from = to + 1;
            }

            return worst;
        }

        private static bool IsClear(Mechanism mechanism, ReadOnlySpan<double> state)
        {
            foreach (ref readonly Link link in mechanism.Links)
            {
                if (link.IsOnDrum && link.Phase.Winding.Length == 0 && state[link.Offset] < ClearOfDrum)
                {
                    return false;
                }
            }

            return true;
        }

        private double Phase(Mechanism mechanism, Recording recording, int first, int last)
        {
            // Hub with all that is wound up on it.
            double mass = _hub.Mass;
            Vec moment = mass * _hub.Centre;
            Tensor about = _hub.Inertia + Tensor.OfPoint(mass, _hub.Centre);
            for (int i = 0; i < _cords.Length; i++)
            {
                CordConstants c = _cords[i];
                int outer = mechanism.OuterLink(i);
                if (mechanism.HasLetGo(i))
                {
                    continue;
                }

                Add(c.EndMass, OnDrum(c, c.Length));
                for (int node = 0; node < c.Segments; node++)
                {
                    if (mechanism.Links[outer + node].Phase.Chart == Chart.Held)
                    {
                        Add(c.NodeMass(node), OnDrum(c, node * c.SegmentLength));
                    }
                }
            }

            void Add(double lump, Vec at)
            {
                mass += lump;
                moment += lump * at;
                about += Tensor.OfPoint(lump, at);
            }

            Vec centre = (1 / mass) * moment;
            HubConstants hub = _hub with { Mass = mass, Centre = centre, Inertia = about + Tensor.OfPoint(-mass, centre) };

            List<int> moving = [.. Enumerable.Range(0, mechanism.Links.Length).Where(i => IsMoving(mechanism, i))];
            CartesianModel.Cord[] particles = new CartesianModel.Cord[moving.Count];
            double[] start = new double[18 + (6 * moving.Count)];
            ReadOnlySpan<double> begin = recording.State(first);
            mechanism.Evaluate(begin);
            Turn turn = new(begin.Slice(Mechanism.Attitude, 4));
            Vec omega = Vec.Read(begin[Mechanism.Rates..]);
            (Vec.Read(begin) + turn.ToInertial(centre)).Write(start);
            (Vec.Read(begin[Mechanism.Speed..]) + turn.ToInertial(omega.Cross(centre))).Write(start.AsSpan(3));
            Vec x = turn.ToInertial(new Vec(1, 0, 0));
            Vec y = turn.ToInertial(new Vec(0, 1, 0));
            Vec z = turn.ToInertial(new Vec(0, 0, 1));
            new Vec(x.X, y.X, z.X).Write(start.AsSpan(6));
            new Vec(x.Y, y.Y, z.Y).Write(start.AsSpan(9));
            new Vec(x.Z, y.Z, z.Z).Write(start.AsSpan(12));
            omega.Write(start.AsSpan(15));
            for (int k = 0; k < moving.Count; k++)
            {
                Link link = mechanism.Links[moving[k]];
                particles[k] = Particle(link.Cord, moving[k] - mechanism.OuterLink(link.Cord));
                particles[k].Phase = link.IsOnDrum ? 0 : 1;
                if (link.Phase.Parent >= 0)
                {
                    particles[k].Tied = moving.IndexOf(link.Phase.Parent);
                    particles[k].Length = _cords[link.Cord].SegmentLength;
                }

                (Vec at, Vec velocity) = Weighing.Track(link, begin);
                at.Write(start.AsSpan(18 + (6 * k)));
                velocity.Write(start.AsSpan(21 + (6 * k)));
            }

            CartesianModel model = new(hub, particles);

            // Both agree on the lengths before anything moves.
            Assert.InRange(model.Misfit(start), 0, 1e-12 * _radius);
            double[] state = model.RunPhase(start, recording.Time(first), recording.Time(last));

            ReadOnlySpan<double> mine = recording.State(last);
            mechanism.Evaluate(mine);
            double worst = HubDifference(mine, centre, state);
            for (int k = 0; k < moving.Count; k++)
            {
                Vec at = Weighing.Track(mechanism.Links[moving[k]], mine).Position;
                worst = Math.Max(worst, (at - Vec.Read(state.AsSpan(18 + (6 * k)))).Length / _radius);
            }

            return worst;
        }

        private static bool IsMoving(Mechanism mechanism, int link) => mechanism.Links[link].IsMoving;

        /// <summary>A place along the wound cord, measured from the weight.</summary>
        private static Vec OnDrum(CordConstants c, double along)
        {
            (double sin, double cos) = Math.SinCos(c.StartAngle + ((along - c.FreeAtStart) / c.Radius));
            return new Vec(c.Radius * cos, c.Radius * sin, c.Height);
        }

        private CartesianModel.Cord Particle(int cord, int node)
        {
            CordConstants c = _cords[cord];
            double spring = node == 0 ? c.Stiffness / c.Length : 0;
            return new CartesianModel.Cord
            {
                Mass = c.NodeMass(node),
                Length = c.Length - (node * c.SegmentLength),
                EndAngle = c.StartAngle + ((c.Length - c.FreeAtStart) / c.Radius),
                Radius = c.Radius,
                Height = c.Height,
                LetGo = c.LetGo.Value,
                Smooth = c.Smooth,
                Spring = spring,
                Damper = 2 * c.DampingRatio * Math.Sqrt(spring * c.Weight),
                Friction = c.Friction,
                FrictionSpeed = c.FrictionSpeed,
            };
        }

        private Propagation Run(Recording? recording)
        {
            Propagation ours = new(new Mechanism(_hub, _cords), new Surroundings(), OdeTolerances.Of(1e-12, 1e-13));
            ours.Run([0, 0, 0, 1], _rates, End, false, recording);
            return ours;
        }

        private static bool WasSlack(Propagation run) =>
            run.Incidents.Any(i => i.Kind is DeploymentEventKind.CordSlack or DeploymentEventKind.CordTaut);

        /// <summary>Relative to the natural scales: spin rate, drum radius, rim speed; directions as they are.</summary>
        private double HubDifference(ReadOnlySpan<double> mine, Vec centre, double[] state)
        {
            Turn turn = new(mine.Slice(Mechanism.Attitude, 4));
            Vec omega = Vec.Read(mine[Mechanism.Rates..]);
            Vec rates = omega - Vec.Read(state.AsSpan(15));
            Vec place = Vec.Read(mine) + turn.ToInertial(centre) - Vec.Read(state);
            Vec speed = Vec.Read(mine[Mechanism.Speed..]) + turn.ToInertial(omega.Cross(centre)) - Vec.Read(state.AsSpan(3));
            Vec axis = turn.ToInertial(new Vec(1, 0, 0)) - new Vec(state[6], state[9], state[12]);
            return Math.Max(Math.Max(rates.Length / Spin, place.Length / _radius), Math.Max(speed.Length / (_radius * Spin), axis.Length));
        }
    }
}
