# SciPy's DOP853 on the problems of equations.h (Debian: python3-scipy), as a partner that the comparison talks to, so that
# all solvers take turns in one run. The right-hand side is the compiled one that CVODE gets.
# Arguments: the shared library and the problem. A line "relative absolute runs" is answered by the processor seconds of
# all runs together and the state at the end.
import ctypes
import sys
import time

import numpy as np
from scipy.integrate import DOP853

library = ctypes.CDLL(sys.argv[1])
problem = int(sys.argv[2])
library.time_at.restype = ctypes.c_double
right_hand_side = library.derivatives
right_hand_side.argtypes = [ctypes.c_int, ctypes.c_int, ctypes.c_void_p, ctypes.c_void_p]
N = library.dimension(problem)
TIMES = [library.time_at(problem, i) for i in range(library.phases(problem) + 1)]


def run(relative, absolute):
    y = np.empty(N)
    library.start(problem, ctypes.c_void_p(y.ctypes.data))
    for phase in range(len(TIMES) - 1):
        library.enter(problem, phase, ctypes.c_void_p(y.ctypes.data))

        def f(t, y):
            slope = np.empty(N)
            right_hand_side(problem, phase, y.ctypes.data, slope.ctypes.data)
            return slope

        solver = DOP853(f, TIMES[phase], y, TIMES[phase + 1], rtol=relative, atol=absolute)
        while solver.status == "running":
            solver.step()
        y = solver.y
    return y


for line in sys.stdin:
    relative, absolute, runs = line.split()
    begin = time.thread_time_ns()
    for _ in range(int(runs)):
        end = run(float(relative), float(absolute))
    print((time.thread_time_ns() - begin) * 1e-9, *end.tolist(), flush=True)
