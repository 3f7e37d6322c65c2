/* The unwinding of DeploymentCase.cs with SUNDIALS CVODE: the same equations of motion and the same numbers, written
   for two grooved, inextensible cords. Prints for each method and tolerance: steps, evaluations, microseconds a run
   (processor time, the median of five times sixty runs), and the largest error against the reference that is given as argument file,
   one number a line: rates (3), unwound and out-of-plane angle of each cord (4). */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sundials/sundials_types.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>
#include <time.h>

enum { N = 21 };
typedef struct { double x, y, z; } vec;
static vec add(vec a, vec b) { return (vec){a.x + b.x, a.y + b.y, a.z + b.z}; }
static vec sub(vec a, vec b) { return (vec){a.x - b.x, a.y - b.y, a.z - b.z}; }
static vec mul(double s, vec a) { return (vec){s * a.x, s * a.y, s * a.z}; }
static double dot(vec a, vec b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
static vec cross(vec a, vec b) { return (vec){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x}; }

typedef struct {
    double mass, weight, radius, height, free, start[2];
    vec centre;
    double i[6], inverse[6]; /* xx yy zz xy xz yz, about the centre of mass */
    long evaluations;
} model;

static vec times(const double *t, vec v)
{
    return (vec){t[0] * v.x + t[3] * v.y + t[4] * v.z, t[3] * v.x + t[1] * v.y + t[5] * v.z, t[4] * v.x + t[5] * v.y + t[2] * v.z};
}

static int derivatives(double t, N_Vector state, N_Vector rate, void *data)
{
    (void)t;
    model *m = data;
    m->evaluations++;
    const double *y = N_VGetArrayPointer(state);
    double *d = N_VGetArrayPointer(rate);
    double qx = y[3], qy = y[4], qz = y[5], qw = y[6];
    vec w = {y[10], y[11], y[12]};
    vec c = m->centre;
    vec turning = times(m->inverse, mul(-1, cross(w, times(m->i, w))));
    vec hub = sub(mul(-1, cross(turning, c)), cross(w, cross(w, c)));
    vec e[2], along[2], across[2], at[2], velocity[2], g[2], answer[2], answerTurning[2];
    double unwinding[2], swinging[2], sine[2], cosine[2], bias[2];
    for (int i = 0; i < 2; i++) {
        const double *q = y + 13 + 4 * i;
        double s, k, sb, cb;
        sincos(m->start[i] + q[0], &s, &k);
        sincos(q[1], &sb, &cb);
        double half = sin(0.5 * q[1]), lift = 2 * half * half;
        e[i] = (vec){k, s, 0};
        vec trailing = {s, -k, 0};
        along[i] = (vec){cb * trailing.x, cb * trailing.y, sb};
        across[i] = (vec){-sb * trailing.x, -sb * trailing.y, cb};
        double free = m->free + m->radius * q[0], arm = free * cb, guide = m->radius * lift / arm;
        unwinding[i] = q[2] / arm;
        swinging[i] = (q[3] - m->radius * unwinding[i] * sb) / free;
        sine[i] = sb;
        cosine[i] = cb;
        vec root = add((vec){0, 0, m->height}, mul(m->radius, e[i]));
        at[i] = add(root, mul(free, along[i]));
        double inward = m->radius * unwinding[i] * lift;
        velocity[i] = add(mul(q[2], e[i]), add(mul(inward, along[i]), mul(q[3], across[i])));
        g[i] = sub(along[i], mul(guide, e[i]));
        bias[i] = q[2] * unwinding[i] * cb + free * swinging[i] * swinging[i] +
                  guide * unwinding[i] * (m->radius * unwinding[i] * (cb - lift) - 2 * free * swinging[i] * sb);
        answerTurning[i] = times(m->inverse, sub(cross(at[i], g[i]), cross(c, g[i])));
        answer[i] = sub(mul(1 / m->mass, g[i]), cross(answerTurning[i], c));
    }
    double a[2][2], b[2];
    for (int i = 0; i < 2; i++) {
        vec f = mul(-1, add(hub, add(cross(turning, at[i]), cross(w, add(cross(w, at[i]), mul(2, velocity[i]))))));
        b[i] = bias[i] + dot(g[i], f);
        for (int j = 0; j < 2; j++)
            a[i][j] = dot(g[i], add(answer[j], cross(answerTurning[j], at[i]))) + (i == j ? dot(g[i], g[i]) / m->weight : 0);
    }
    double det = a[0][0] * a[1][1] - a[0][1] * a[1][0];
    double tension[2] = {(b[0] * a[1][1] - b[1] * a[0][1]) / det, (a[0][0] * b[1] - a[1][0] * b[0]) / det};
    for (int i = 0; i < 2; i++) {
        hub = add(hub, mul(tension[i], answer[i]));
        turning = add(turning, mul(tension[i], answerTurning[i]));
    }
    for (int i = 0; i < 2; i++) {
        const double *q = y + 13 + 4 * i;
        double *p = d + 13 + 4 * i;
        vec acceleration = sub(mul(-tension[i] / m->weight, g[i]),
            add(hub, add(cross(turning, at[i]), cross(w, add(cross(w, at[i]), mul(2, velocity[i]))))));
        double inward = dot(velocity[i], along[i]);
        p[0] = unwinding[i];
        p[1] = swinging[i];
        p[2] = dot(acceleration, e[i]) + unwinding[i] * (q[3] * sine[i] - inward * cosine[i]);
        p[3] = dot(acceleration, across[i]) - q[2] * unwinding[i] * sine[i] - inward * swinging[i];
    }
    double n = 2 / (qx * qx + qy * qy + qz * qz + qw * qw);
    memcpy(d, y + 7, 3 * sizeof *d);
    d[3] = 0.5 * (qw * w.x + qy * w.z - qz * w.y);
    d[4] = 0.5 * (qw * w.y + qz * w.x - qx * w.z);
    d[5] = 0.5 * (qw * w.z + qx * w.y - qy * w.x);
    d[6] = -0.5 * (qx * w.x + qy * w.y + qz * w.z);
    d[7] = (1 - n * (qy * qy + qz * qz)) * hub.x + n * (qx * qy - qz * qw) * hub.y + n * (qx * qz + qy * qw) * hub.z;
    d[8] = n * (qx * qy + qz * qw) * hub.x + (1 - n * (qx * qx + qz * qz)) * hub.y + n * (qy * qz - qx * qw) * hub.z;
    d[9] = n * (qx * qz - qy * qw) * hub.x + n * (qy * qz + qx * qw) * hub.y + (1 - n * (qx * qx + qy * qy)) * hub.z;
    d[10] = turning.x;
    d[11] = turning.y;
    d[12] = turning.z;
    return 0;
}

static void prepare(model *m, int planar, double *y)
{
    double inertia[2][6] = {{31.5, 32.1, 18.4, 0.08, -0.11, 0.05}, {31.5, 32.1, 18.4, 0, 0, 0}};
    memset(m, 0, sizeof *m);
    m->mass = 182;
    m->weight = 0.62;
    m->radius = 0.43;
    m->height = 0.427;
    m->free = 0.05;
    m->start[1] = acos(-1);
    m->centre = planar ? (vec){0, 0, 0.427} : (vec){0.001, 0, 0.412};
    memcpy(m->i, inertia[planar], sizeof m->i);
    double *t = m->i;
    double xx = t[1] * t[2] - t[5] * t[5], xy = t[4] * t[5] - t[3] * t[2], xz = t[3] * t[5] - t[4] * t[1];
    double s = 1 / (t[0] * xx + t[3] * xy + t[4] * xz);
    double inverse[6] = {s * xx, s * (t[0] * t[2] - t[4] * t[4]), s * (t[0] * t[1] - t[3] * t[3]), s * xy, s * xz, s * (t[3] * t[4] - t[0] * t[5])};
    memcpy(m->inverse, inverse, sizeof inverse);
    memset(y, 0, N * sizeof *y);
    y[6] = 1;
    y[10] = planar ? 0 : 0.1;
    y[11] = planar ? 0 : 0.05;
    y[12] = 7.5;
}

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return t.tv_sec + 1e-9 * t.tv_nsec;
}

int main(int count, char **arguments)
{
    int planar = count > 2 && strcmp(arguments[2], "plane") == 0;
    double reference[7];
    FILE *file = count > 1 ? fopen(arguments[1], "r") : NULL;
    for (int i = 0; i < 7; i++)
        if (!file || fscanf(file, "%lf", &reference[i]) != 1) {
            fprintf(stderr, "usage: deployment reference.txt [plane]; seven numbers expected\n");
            return 2;
        }
    SUNContext context;
    SUNContext_Create(NULL, &context);
    printf("method tolerance steps evaluations microseconds error\n");
    for (int bdf = 0; bdf < 2; bdf++)
        for (double tolerance = 1e-7; tolerance > 3e-14; tolerance *= 0.31622776601683794) {
            model m;
            double start[N];
            prepare(&m, planar, start);
            N_Vector y = N_VNew_Serial(N, context);
            memcpy(N_VGetArrayPointer(y), start, sizeof start);
            void *cvode = CVodeCreate(bdf ? CV_BDF : CV_ADAMS, context);
            CVodeInit(cvode, derivatives, 0, y);
            CVodeSStolerances(cvode, tolerance, 0.1 * tolerance);
            CVodeSetUserData(cvode, &m);
            CVodeSetMaxNumSteps(cvode, 1000000);
            SUNMatrix matrix = NULL;
            SUNLinearSolver linear = NULL;
            SUNNonlinearSolver fixed = NULL;
            if (bdf) {
                matrix = SUNDenseMatrix(N, N, context);
                linear = SUNLinSol_Dense(y, matrix, context);
                CVodeSetLinearSolver(cvode, linear, matrix);
            } else {
                fixed = SUNNonlinSol_FixedPoint(y, 0, context);
                CVodeSetNonlinearSolver(cvode, fixed);
            }
            double medians[5];
            int failed = 0;
            long evaluations = 0, steps = 0;
            for (int group = 0; group < 5; group++) {
                enum { Runs = 60 };
                double from = now();
                for (int run = 0; run < Runs && !failed; run++) {
                    double t;
                    memcpy(N_VGetArrayPointer(y), start, sizeof start);
                    CVodeReInit(cvode, 0, y);
                    CVodeSetStopTime(cvode, 0.5);
                    m.evaluations = 0;
                    failed = CVode(cvode, 0.5, y, &t, CV_NORMAL) < 0;
                }
                medians[group] = (now() - from) / Runs * 1e6;
                evaluations = m.evaluations;
                CVodeGetNumSteps(cvode, &steps);
            }
            for (int i = 0; i < 5; i++)
                for (int j = i + 1; j < 5; j++)
                    if (medians[j] < medians[i]) {
                        double swap = medians[i];
                        medians[i] = medians[j];
                        medians[j] = swap;
                    }
            const double *end = N_VGetArrayPointer(y);
            double error = 0;
            for (int i = 0; i < 3; i++)
                error = fmax(error, fabs(end[10 + i] - reference[i]) / 7.5);
            for (int i = 0; i < 2; i++) {
                error = fmax(error, fabs(end[13 + 4 * i] - reference[3 + 2 * i]));
                error = fmax(error, fabs(end[14 + 4 * i] - reference[4 + 2 * i]));
            }
            if (!failed)
                printf("%s %.2e %ld %ld %.1f %.2e\n", bdf ? "BDF" : "Adams", tolerance, steps, evaluations, medians[2], error);
            CVodeFree(&cvode);
            N_VDestroy(y);
            if (bdf) {
                SUNLinSolFree(linear);
                SUNMatDestroy(matrix);
            } else {
                SUNNonlinSolFree(fixed);
            }
        }
    SUNContext_Free(&context);
    return 0;
}
