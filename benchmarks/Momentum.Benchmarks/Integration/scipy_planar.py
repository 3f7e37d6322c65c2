# The planar de-spin of PlanarDespinProblem.cs with SciPy's DOP853 (Debian: python3-scipy).
# Prints one line for each tolerance: name, tolerance, largest relative error at the end, nanoseconds a run.
import math
import time

from scipy.integrate import solve_ivp

HUB, R, M, L = 300.0, 1.5, 6.0, 5.7
A, B, C = HUB + M * R * R, M * L * L, M * L * R
START = [0.0, 0.1, 4.995695633459276, 9.995695633459276]
END = [2.6568414880065113619, 1.3774083113504420569, 0.040850342839989334925, 6.3299633753390143553]


def unwinding(t, y):
    _, a, w, o = y
    return [w, o - w, -(M * R * R / A) * a * o * o, (o * o - 2.0 * (o - w) * o) / a]


def hinging(t, y):
    _, a, w, o = y
    s, k = math.sin(a), math.cos(a)
    det = A * B - C * s * C * s
    r1, r2 = -C * k * o * o, C * k * w * w
    return [w, o - w, (B * r1 - C * s * r2) / det, (A * r2 - C * s * r1) / det]


def run(tolerance):
    y = solve_ivp(unwinding, (0.02, 0.76), START, method="DOP853", rtol=tolerance, atol=tolerance).y[:, -1]
    y[1] = 0.0
    return solve_ivp(hinging, (0.76, 1.0), y, method="DOP853", rtol=tolerance, atol=tolerance).y[:, -1]


for i in range(16, 53, 2):
    tolerance = 10.0 ** (-i / 4.0)
    y = run(tolerance)
    error = max(abs(a - b) for a, b in zip(y, END)) / abs(END[3])
    best = math.inf
    for _ in range(15):
        begin = time.perf_counter_ns()
        run(tolerance)
        best = min(best, time.perf_counter_ns() - begin)
    print(f"SciPy-DOP853 {tolerance:.6e} {error:.6e} {best:.1f}")
