/* The planar de-spin of PlanarDespinProblem.cs with SUNDIALS CVODE (Debian: libsundials-dev, gcc).
   Prints one line for each method and tolerance: name, tolerance, largest relative error at the end, nanoseconds a run. */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <string.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>
#include <time.h>

#define HUB 300.0
#define RADIUS 1.5
#define WEIGHTS 6.0
#define LENGTH 5.7
static const double A = HUB + WEIGHTS * RADIUS * RADIUS, B = WEIGHTS * LENGTH * LENGTH, C = WEIGHTS * LENGTH * RADIUS;
static const double start_state[4] = { 0.0, 0.1, 4.995695633459276, 9.995695633459276 };
static const double end_state[4] = { 2.6568414880065113619, 1.3774083113504420569, 0.040850342839989334925, 6.3299633753390143553 };

static int unwinding(realtype t, N_Vector yv, N_Vector fv, void *user)
{
    const double *y = N_VGetArrayPointer(yv);
    double *f = N_VGetArrayPointer(fv);
    double a = y[1], w = y[2], o = y[3];
    f[0] = w;
    f[1] = o - w;
    f[2] = -(WEIGHTS * RADIUS * RADIUS / A) * a * o * o;
    f[3] = (o * o - 2.0 * (o - w) * o) / a;
    return 0;
}

static int hinging(realtype t, N_Vector yv, N_Vector fv, void *user)
{
    const double *y = N_VGetArrayPointer(yv);
    double *f = N_VGetArrayPointer(fv);
    double w = y[2], o = y[3], s = sin(y[1]), k = cos(y[1]);
    double det = A * B - C * s * C * s, r1 = -C * k * o * o, r2 = C * k * w * w;
    f[0] = w;
    f[1] = o - w;
    f[2] = (B * r1 - C * s * r2) / det;
    f[3] = (A * r2 - C * s * r1) / det;
    return 0;
}

static int phase;
static int both(realtype t, N_Vector y, N_Vector f, void *user)
{
    return phase == 0 ? unwinding(t, y, f, user) : hinging(t, y, f, user);
}

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec * 1e9 + t.tv_nsec;
}

static int run(void *mem, N_Vector y)
{
    realtype t;
    double *v = N_VGetArrayPointer(y);
    memcpy(v, start_state, sizeof start_state);
    phase = 0;
    if (CVodeReInit(mem, 0.02, y) || CVodeSetStopTime(mem, 0.76) || CVode(mem, 0.76, y, &t, CV_NORMAL) < 0) return 1;
    v[1] = 0.0;
    phase = 1;
    if (CVodeReInit(mem, 0.76, y) || CVodeSetStopTime(mem, 1.0) || CVode(mem, 1.0, y, &t, CV_NORMAL) < 0) return 1;
    return 0;
}

int main(void)
{
    SUNContext context;
    SUNContext_Create(NULL, &context);
    for (int method = 0; method < 2; method++)
    {
        N_Vector y = N_VNew_Serial(4, context);
        memcpy(N_VGetArrayPointer(y), start_state, sizeof start_state);
        void *mem = CVodeCreate(method == 0 ? CV_ADAMS : CV_BDF, context);
        CVodeInit(mem, both, 0.02, y);
        CVodeSStolerances(mem, 1e-6, 1e-6);
        CVodeSetMaxNumSteps(mem, 1000000);
        if (method == 0)
            CVodeSetNonlinearSolver(mem, SUNNonlinSol_FixedPoint(y, 0, context));
        else
        {
            SUNMatrix m = SUNDenseMatrix(4, 4, context);
            CVodeSetLinearSolver(mem, SUNLinSol_Dense(y, m, context), m);
        }
        for (int i = 16; i <= 56; i++)
        {
            double tolerance = pow(10.0, -i / 4.0), error = 0.0, best = INFINITY;
            CVodeSStolerances(mem, tolerance, tolerance);
            if (run(mem, y)) continue;
            double *v = N_VGetArrayPointer(y);
            for (int j = 0; j < 4; j++) error = fmax(error, fabs(v[j] - end_state[j]) / fabs(end_state[3]));
            for (int batch = 0; batch < 15; batch++)
            {
                int repeats = 20;
                double begin = now();
                for (int r = 0; r < repeats; r++) run(mem, y);
                best = fmin(best, (now() - begin) / repeats);
            }
            printf("CVODE-%s %.6e %.6e %.1f\n", method == 0 ? "Adams" : "BDF", tolerance, error, best);
        }
    }
    return 0;
}
