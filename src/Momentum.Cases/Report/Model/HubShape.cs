namespace Momentum.Cases.Report.Model;

/// <summary>What stands for the hub in the pictures: a cylinder about the drums' axis.</summary>
/// <param name="Radius">m.</param>
/// <param name="Bottom">Height of its lower end from the hub's centre of mass, m.</param>
/// <param name="Top">Height of its upper end, m.</param>
/// <param name="AxisX">Where the drums' axis passes the centre of mass, along the hub's first axis, m.</param>
/// <param name="AxisY">The same along the hub's second axis, m.</param>
/// <param name="Words">A sentence that says what of it is the vehicle's and what is not.</param>
internal sealed record HubShape(double Radius, double Bottom, double Top, double AxisX, double AxisY, string Words);
