#!/usr/bin/env bash
# Builds the CVODE side of the comparison with the distribution's SUNDIALS and runs it, in space and in the plane.
# Needs a C compiler and libsundials-dev. The library's side: dotnet run -c Release --project benchmarks/Momentum.Benchmarks -- --filter '*Unwinding*'
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
build=$(mktemp -d)
trap 'rm -r "$build"' EXIT
cc -O3 -march=native -D_GNU_SOURCE "$here/deployment.c" -o "$build/deployment" \
    -lsundials_cvode -lsundials_nvecserial -lsundials_sunlinsoldense -lsundials_sunmatrixdense \
    -lsundials_sunnonlinsolfixedpoint -lm
echo "in space"
"$build/deployment" "$here/reference-space.txt"
echo "in the plane"
"$build/deployment" "$here/reference-plane.txt" plane
