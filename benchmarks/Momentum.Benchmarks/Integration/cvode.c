/* SUNDIALS CVODE on the problems of equations.h, as a shared library that the comparison loads (Debian: gcc,
   libsundials-dev): so all solvers take turns in one run. Adams' methods come with functional iteration, the backward
   differentiation formulas with Newton's on a dense matrix of difference quotients. */
#define _GNU_SOURCE
#include "equations.h"
#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <stdlib.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>
#include <time.h>

typedef struct {
    int problem, phase;
    SUNContext context;
    N_Vector state;
    void *memory;
    SUNMatrix matrix;
    SUNLinearSolver linear;
    SUNNonlinearSolver nonlinear;
} solver;

static int planar(realtype t, N_Vector y, N_Vector f, void *data)
{
    (void)t;
    planar_derivatives(((solver *)data)->phase, NV_DATA_S(y), NV_DATA_S(f));
    return 0;
}

static int in_space(realtype t, N_Vector y, N_Vector f, void *data)
{
    (void)t;
    (void)data;
    space_derivatives(NV_DATA_S(y), NV_DATA_S(f));
    return 0;
}

int dimension(int problem) { return outlines[problem].dimension; }

int phases(int problem) { return outlines[problem].phases; }

double time_at(int problem, int index) { return outlines[problem].times[index]; }

void start(int problem, double *y) { set_start(problem, y); }

void enter(int problem, int phase, double *y) { enter_phase(problem, phase, y); }

void derivatives(int problem, int phase, const double *y, double *f) { set_derivatives(problem, phase, y, f); }

/* Processor time of the calling thread, so that what else the machine does is not counted. */
double processor_seconds(void)
{
    struct timespec t;
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
    return t.tv_sec + 1e-9 * t.tv_nsec;
}

/* Kept until the program ends. */
void *cvode_new(int problem, int bdf, double relative, double absolute)
{
    solver *s = calloc(1, sizeof *s);
    int n = outlines[problem].dimension;
    s->problem = problem;
    SUNContext_Create(NULL, &s->context);
    s->state = N_VNew_Serial(n, s->context);
    set_start(problem, NV_DATA_S(s->state));
    s->memory = CVodeCreate(bdf ? CV_BDF : CV_ADAMS, s->context);
    CVodeInit(s->memory, problem == PLANAR ? planar : in_space, outlines[problem].times[0], s->state);
    CVodeSetUserData(s->memory, s);
    CVodeSStolerances(s->memory, relative, absolute);
    CVodeSetMaxNumSteps(s->memory, 1000000);
    if (bdf) {
        s->matrix = SUNDenseMatrix(n, n, s->context);
        s->linear = SUNLinSol_Dense(s->state, s->matrix, s->context);
        CVodeSetLinearSolver(s->memory, s->linear, s->matrix);
    } else {
        s->nonlinear = SUNNonlinSol_FixedPoint(s->state, 0, s->context);
        CVodeSetNonlinearSolver(s->memory, s->nonlinear);
    }
    return s;
}

/* One run from the start; 0 if it came to the end. */
int cvode_run(void *handle, double *end)
{
    solver *s = handle;
    const outline *o = &outlines[s->problem];
    double *y = NV_DATA_S(s->state);
    set_start(s->problem, y);
    for (s->phase = 0; s->phase < o->phases; s->phase++) {
        double from = o->times[s->phase], to = o->times[s->phase + 1], t;
        enter_phase(s->problem, s->phase, y);
        if (CVodeReInit(s->memory, from, s->state) || CVodeSetStopTime(s->memory, to) ||
            CVode(s->memory, to, s->state, &t, CV_NORMAL) < 0)
            return 1;
    }
    memcpy(end, y, o->dimension * sizeof *end);
    return 0;
}
