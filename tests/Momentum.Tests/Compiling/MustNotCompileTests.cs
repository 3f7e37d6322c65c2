namespace Momentum.Tests.Compiling;

/// <summary>
/// What the types are for: each snippet's right form compiles and its wrong form, one place different, does not. The
/// laws behind them are those of any text on rigid-body dynamics: components along different axes do not add, points
/// are not displacements, and only the physical products exist.
/// </summary>
public sealed class MustNotCompileTests
{
    [Theory]
    [InlineData("_ = force + «force|forceFixed»;", "CS0019")]
    [InlineData("_ = force - «force|forceFixed»;", "CS0019")]
    [InlineData("_ = torque + «torque|torqueFixed»;", "CS0019")]
    [InlineData("_ = momentum + «momentum|momentumFixed»;", "CS0019")]
    [InlineData("_ = angularMomentum - «angularMomentum|angularMomentumFixed»;", "CS0019")]
    [InlineData("_ = rate == «rate|rateFixed»;", "CS0019")]
    [InlineData("_ = rate != «rate|rateFixed»;", "CS0019")]
    [InlineData("velocity += «velocity|velocityFixed»;", "CS0019")]
    [InlineData("velocity = «velocity|velocityFixed»;", "CS0029")]
    [InlineData("Vector<Force, «Body|Inertial»> f = force;", "CS0029")]
    [InlineData("_ = force.EqualsWithin(«force|forceFixed», push);", "CS1503")]
    [InlineData("_ = axis == «axis|axisFixed»;", "CS0019")]
    [InlineData("_ = axis.AngleTo(«axis|axisFixed»);", "CS1503")]
    [InlineData("_ = force.ComponentAlong(«axis|axisFixed»);", "CS1503")]
    [InlineData("_ = Vector<Force, Body>.Along(«axis|axisFixed», push);", "CS1503")]
    [InlineData("_ = displacement.Cross(«force|forceFixed»);", "CS0411")]
    [InlineData("_ = force.Dot(«velocity|velocityFixed»);", "CS0411")]
    [InlineData("_ = rate.Cross(«displacement|displacementFixed»);", "CS0411")]
    [InlineData("TakesForce(«force|forceFixed»);", "CS1503")]
    [InlineData("Vector<Force, Body>[] all = [force, «force|forceFixed»];", "CS0029")]
    [InlineData("_ = true ? force : «force|forceFixed»;", "CS0173")]
    public void Components_along_different_axes_do_not_mix(string snippet, string error) => OnlyTheWrongFormFails(snippet, error);

    [Theory]
    [InlineData("Vector<Force, Inertial> f = attitude.Apply(«force|forceFixed»);", "CS1503")]
    [InlineData("Vector<Force, «Inertial|Body»> f = attitude.Apply(force);", "CS0029")]
    [InlineData("_ = attitude.Apply(force) + «forceFixed|force»;", "CS0019")]
    [InlineData("_ = «attitudeBack|attitude».Apply(forceFixed);", "CS1503")]
    [InlineData("_ = attitude.«Inverse()|Then(attitude)».Apply(forceFixed);", "CS1503")]
    [InlineData("_ = «mount|attitude».Then(attitude);", "CS1503")]
    [InlineData("_ = mount.Then(«attitude|mount»);", "CS1503")]
    [InlineData("Rotation<Camera, «Inertial|Body»> r = mount.Then(attitude);", "CS0029")]
    [InlineData("Rotation<Inertial, Body> r = attitude«.Inverse()|»;", "CS0029")]
    [InlineData("_ = mount.Then(attitude).Apply(«velocitySeen|velocity»);", "CS1503")]
    [InlineData("_ = attitude.Apply(mount.Apply(velocitySeen)) - «velocityFixed|velocity»;", "CS0019")]
    [InlineData("_ = attitude == «attitudeBack.Inverse()|attitudeBack»;", "CS0019")]
    [InlineData("_ = attitude.EqualsWithin(«attitude|attitudeBack», angle);", "CS1503")]
    [InlineData("_ = attitude.EqualsWithin(attitude, «angle|spin»);", "CS1503")]
    [InlineData("_ = Rotation<Body, Inertial>.About(«axis|axisFixed», angle);", "CS1503")]
    [InlineData("_ = Rotation<Body, Inertial>.About(axis, «angle|1.5»);", "CS1503")]
    [InlineData("Direction<«Inertial|Body»> d = attitude.Apply(axis);", "CS0029")]
    [InlineData("_ = new Rotation<«Body|int», Inertial>();", "CS0315")]
    [InlineData("Vector<Force, «Body|double»> f = default;", "CS0315")]
    public void Rotations_compose_and_apply_only_where_the_frames_meet(string snippet, string error) => OnlyTheWrongFormFails(snippet, error);

    [Theory]
    [InlineData("_ = point + «displacement|point»;", "CS0019")]
    [InlineData("_ = point «-|+» point;", "CS0019")]
    [InlineData("_ = point - «point|pointFixed»;", "CS0019")]
    [InlineData("_ = point + «displacement|displacementFixed»;", "CS0019")]
    [InlineData("_ = «displacement|point» * 2;", "CS0019")]
    [InlineData("_ = -«displacement|point»;", "CS0023")]
    [InlineData("_ = «displacement|point».Cross(force);", "CS1929")]
    [InlineData("_ = rate.Cross(«displacement|point»);", "CS1929")]
    [InlineData("_ = rate.Cross(point«.FromOrigin|»);", "CS1929")]
    [InlineData("Position<Body> p = «point|displacement»;", "CS0029")]
    [InlineData("Vector<Length, Body> d = point - «point|displacement»;", "CS0029")]
    [InlineData("_ = attitude.Apply(«displacement|point»);", "CS1503")]
    [InlineData("_ = point == «point|displacement»;", "CS0019")]
    [InlineData("_ = Position<Body>.Of(1, 2, 3, LengthUnit.«Meter|Kilogram»);", "CS0117")]
    [InlineData("_ = Position<Body>.Of(1, 2, 3«, LengthUnit.Meter|»);", "CS1503")]
    [InlineData("_ = point.EqualsWithin(point, «length|1e-9»);", "CS1503")]
    public void A_point_is_not_a_displacement(string snippet, string error) => OnlyTheWrongFormFails(snippet, error);

    [Theory]
    [InlineData("_ = force + «force|torque»;", "CS0019")]
    [InlineData("_ = velocity + «velocity|acceleration»;", "CS0019")]
    [InlineData("_ = velocity + «acceleration * time|acceleration»;", "CS0019")]
    [InlineData("_ = momentum + «mass * velocity|velocity»;", "CS0019")]
    [InlineData("_ = momentum - «momentum|angularMomentum»;", "CS0019")]
    [InlineData("_ = rate + «rateChange * time|rateChange»;", "CS0019")]
    [InlineData("_ = force + «force|1.0»;", "CS0019")]
    [InlineData("Vector<«Force|Torque», Body> f = mass * acceleration;", "CS0029")]
    [InlineData("Vector<«Torque|Energy», Body> t = displacement.Cross(force);", "CS0029")]
    [InlineData("_ = Vector<Force, Body>.Of(push, push, «push|twist»);", "CS1503")]
    [InlineData("_ = Vector<Force, Body>.Of(push, push, «push|3.0»);", "CS1503")]
    [InlineData("_ = force.EqualsWithin(force, «push|1e-9»);", "CS1503")]
    [InlineData("Force f = force.«X|Magnitude.Newtons»;", "CS0029")]
    [InlineData("_ = spinMomentum + «spinMomentum|thrownMomentum»;", "CS0019")]
    [InlineData("_ = spinMomentum > «spinMomentum|twist»;", "CS0019")]
    [InlineData("_ = spinMomentum.EqualsWithin(spinMomentum, «spinMomentum|1e-9»);", "CS1503")]
    [InlineData("AngularMomentum h = «spinMomentum|12.5»;", "CS0029")]
    public void Different_quantities_do_not_mix(string snippet, string error) => OnlyTheWrongFormFails(snippet, error);

    [Theory]
    [InlineData("_ = mass * «acceleration|force»;", "CS0019")]
    [InlineData("_ = mass * «velocity|momentum»;", "CS9340")]
    [InlineData("_ = «mass|moment» * velocity;", "CS0019")]
    [InlineData("_ = force / «mass|moment»;", "CS9340")]
    [InlineData("_ = force * «time|length»;", "CS9340")]
    [InlineData("_ = displacement «/|*» time;", "CS0019")]
    [InlineData("_ = angularMomentum «/|*» time;", "CS0019")]
    [InlineData("_ = torque * «time|angle»;", "CS9340")]
    [InlineData("_ = velocity * «2.0|velocity»;", "CS0019")]
    [InlineData("_ = 2.0 «*|/» velocity;", "CS0019")]
    [InlineData("_ = «displacement|force».Cross(momentum);", "CS1929")]
    [InlineData("_ = displacement.Cross(«force|torque»);", "CS1929")]
    [InlineData("_ = displacement.Cross(«momentum|velocity»);", "CS1929")]
    [InlineData("_ = displacement.Cross(«force|displacement»);", "CS1929")]
    [InlineData("_ = «displacement|force».Cross(force);", "CS1929")]
    [InlineData("_ = rate.Cross(«angularMomentum|torque»);", "CS1929")]
    [InlineData("_ = rate.Cross(«angularMomentum|momentum»);", "CS1929")]
    [InlineData("_ = torque.Dot(«rate|velocity»);", "CS1929")]
    [InlineData("_ = force.Dot(«velocity|rate»);", "CS1503")]
    [InlineData("_ = angularMomentum.Dot(«rate|velocity»);", "CS1929")]
    [InlineData("_ = momentum.Dot(«velocity|rate»);", "CS1929")]
    [InlineData("_ = moment * «spin|speed»;", "CS0019")]
    [InlineData("_ = «moment|mass» * spin;", "CS0019")]
    [InlineData("_ = spinMomentum / «moment|mass»;", "CS0019")]
    [InlineData("_ = spin * «length|time * time»;", "CS0019")]
    [InlineData("AngularMomentum h = moment * «spin|frequency»;", "CS0019")]
    public void Only_the_physical_products_exist(string snippet, string error) => OnlyTheWrongFormFails(snippet, error);

    [Theory]
    [InlineData("Energy e = force.Dot(displacement)«| + twist»;", "CS0019")]
    [InlineData("TakesEnergy(«work|twist»);", "CS1503")]
    [InlineData("Energy e = «force.Dot(displacement)|displacement.Cross(force)»;", "CS0029")]
    [InlineData("«Power|Energy» p = torque.Dot(rate);", "CS0029")]
    [InlineData("«Energy|Torque» e = angularMomentum.Dot(rate) * 0.5;", "CS0029")]
    [InlineData("«Torque|Energy» t = twist;", "CS0029")]
    [InlineData("«Power|Torque» p = twist * spin;", "CS0029")]
    [InlineData("RotationalSpeed w = «spin|frequency»;", "CS0029")]
    [InlineData("_ = rate.Z - «spin|frequency»;", "CS0019")]
    [InlineData("_ = mass + «mass|push»;", "CS0019")]
    public void Kinds_of_one_dimension_do_not_mix(string snippet, string error) => OnlyTheWrongFormFails(snippet, error);

    private static void OnlyTheWrongFormFails(string text, string error)
    {
        Snippet snippet = new(text);
        Assert.Empty(snippet.ErrorsOfTheRightForm());
        IReadOnlyList<string> errors = snippet.ErrorsOfTheWrongForm();
        Assert.NotEmpty(errors);
        Assert.All(errors, e => Assert.StartsWith(error + ":", e, StringComparison.Ordinal));
    }
}
