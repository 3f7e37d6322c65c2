#!/usr/bin/env bash
# Compares the integrator with MathNet.Numerics, SUNDIALS CVODE and SciPy on the planar de-spin, in one run.
# Needs (Debian): apt-get install gcc libsundials-dev python3-scipy. Writes benchmarks/results/planar-despin.{md,svg}.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
dotnet run -c Release --project "$here/.." -- work-precision "$here" "$here/../../results"
