#!/usr/bin/env bash
# Compares the integrator with MathNet.Numerics, SUNDIALS CVODE and SciPy at equal achieved error, in one run a problem.
# Usage: compare.sh [planar-despin|deployment-in-space]; without argument both.
# Needs (Debian): apt-get install gcc libsundials-dev python3-scipy. Writes benchmarks/results/<problem>.{md,svg}.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
build=$(mktemp -d)
trap 'rm -r "$build"' EXIT
gcc -std=gnu11 -O3 -march=native -shared -fPIC "$here/cvode.c" -o "$build/solvers.so" \
    -lsundials_cvode -lsundials_nvecserial -lsundials_sunmatrixdense -lsundials_sunlinsoldense \
    -lsundials_sunnonlinsolfixedpoint -lm
dotnet build -c Release -v q "$here/.." >"$build/log" || { cat "$build/log"; exit 1; }
for problem in ${1:-planar-despin deployment-in-space}; do
    OPENBLAS_NUM_THREADS=1 dotnet run -c Release --no-build --project "$here/.." -- \
        work-precision "$problem" "$build/solvers.so" "$here/dop853.py" "$here/../../results"
done
