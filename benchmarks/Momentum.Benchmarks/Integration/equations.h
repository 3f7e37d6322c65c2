/* The two initial-value problems of the comparison, for the solvers that are not in .NET. The numbers and equations are
   those of PlanarDespin.cs and DeploymentInSpace.cs; the comparison begins by checking that both sides give the same
   derivatives. With `real` another type, reference.c integrates the same text in quadruple precision. */
#include <math.h>
#include <string.h>

#ifndef REAL
#define REAL double
#define SINCOS sincos
#endif
typedef REAL real;

enum { PLANAR, IN_SPACE, PROBLEMS };
enum { MOST_COMPONENTS = 21 };

typedef struct {
    int dimension, phases;
    double times[3]; /* begin, then the end of each phase */
} outline;

static const outline outlines[PROBLEMS] = {{4, 2, {0.02, 0.76, 1.0}}, {21, 1, {0.0, 0.5}}};

/* Planar: turn of the hub; unwound angle, then cord angle from the tangent; spin; rate of the cord in space. */

#define HUB 300.0
#define RADIUS 1.5
#define WEIGHTS 6.0
#define LENGTH 5.7
static const double A = HUB + WEIGHTS * RADIUS * RADIUS, B = WEIGHTS * LENGTH * LENGTH, C = WEIGHTS * LENGTH * RADIUS;

static inline void planar_derivatives(int phase, const real *y, real *f)
{
    real a = y[1], w = y[2], o = y[3];
    f[0] = w;
    f[1] = o - w;
    if (phase == 0) {
        f[2] = -(WEIGHTS * RADIUS * RADIUS / A) * a * o * o;
        f[3] = (o * o - 2.0 * (o - w) * o) / a;
        return;
    }
    real s, k;
    SINCOS(a, &s, &k);
    real scale = 1 / (A * B - C * s * C * s), r1 = -C * k * o * o, r2 = C * k * w * w;
    f[2] = (B * r1 - C * s * r2) * scale;
    f[3] = (A * r2 - C * s * r1) * scale;
}

/* In space: place of the hub's origin (inertial), attitude quaternion (scalar last), velocity of the origin (inertial),
   body rates; for each of two cords the unwound angle, the angle out of the drum's plane, and the weight's velocity
   relative to the hub along the drum's radius and across the cord. Written for two inextensible cords on grooved drums. */

#define HUB_MASS 182.0
#define WEIGHT 0.62
#define DRUM 0.43
#define HEIGHT 0.427
#define HANGING 0.05
static const double cord_start[2] = {0.0, 3.141592653589793};

typedef struct { real x, y, z; } vec;
static inline vec add(vec a, vec b) { return (vec){a.x + b.x, a.y + b.y, a.z + b.z}; }
static inline vec sub(vec a, vec b) { return (vec){a.x - b.x, a.y - b.y, a.z - b.z}; }
static inline vec mul(real s, vec a) { return (vec){s * a.x, s * a.y, s * a.z}; }
static inline real dot(vec a, vec b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
static inline vec cross(vec a, vec b) { return (vec){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x}; }

/* xx yy zz xy xz yz, about the centre of mass, and its inverse. */
#define IXX 31.5
#define IYY 32.1
#define IZZ 18.4
#define IXY 0.08
#define IXZ -0.11
#define IYZ 0.05
#define CXX (IYY * IZZ - IYZ * IYZ)
#define CXY (IXZ * IYZ - IXY * IZZ)
#define CXZ (IXY * IYZ - IXZ * IYY)
#define SCALE (1 / ((real)IXX * CXX + IXY * CXY + IXZ * CXZ))
static const vec centre = {0.001, 0, 0.412};

static inline vec times(const real *t, vec v)
{
    return (vec){t[0] * v.x + t[3] * v.y + t[4] * v.z, t[3] * v.x + t[1] * v.y + t[5] * v.z, t[4] * v.x + t[5] * v.y + t[2] * v.z};
}

static inline void space_derivatives(const real *y, real *d)
{
    const real body[6] = {IXX, IYY, IZZ, IXY, IXZ, IYZ};
    const real inverse[6] = {SCALE * CXX, SCALE * (IXX * IZZ - IXZ * IXZ), SCALE * (IXX * IYY - IXY * IXY),
                             SCALE * CXY, SCALE * CXZ, SCALE * (IXY * IXZ - IXX * IYZ)};
    real qx = y[3], qy = y[4], qz = y[5], qw = y[6];
    vec w = {y[10], y[11], y[12]};
    vec turning = times(inverse, cross(times(body, w), w));
    vec hub = sub(cross(centre, turning), cross(w, cross(w, centre)));
    vec e[2], along[2], across[2], at[2], velocity[2], g[2], answer[2], answer_turning[2];
    real unwinding[2], swinging[2], sine[2], cosine[2], bias[2], inward[2];
    for (int i = 0; i < 2; i++) {
        const real *q = y + 13 + 4 * i;
        real s, k, sb, cb;
        SINCOS(cord_start[i] + q[0], &s, &k);
        SINCOS(q[1], &sb, &cb);
        real lift = sb * sb / (1 + cb); /* 1 - cos, without its cancellation */
        e[i] = (vec){k, s, 0};
        along[i] = (vec){cb * s, -cb * k, sb};
        across[i] = (vec){-sb * s, sb * k, cb};
        real free = HANGING + DRUM * q[0], per_free = 1 / free, per_arm = per_free / cb, guide = DRUM * lift * per_arm;
        unwinding[i] = q[2] * per_arm;
        swinging[i] = (q[3] - DRUM * unwinding[i] * sb) * per_free;
        inward[i] = DRUM * unwinding[i] * lift;
        sine[i] = sb;
        cosine[i] = cb;
        at[i] = (vec){DRUM * k + free * along[i].x, DRUM * s + free * along[i].y, HEIGHT + free * along[i].z};
        velocity[i] = add(mul(q[2], e[i]), add(mul(inward[i], along[i]), mul(q[3], across[i])));
        g[i] = sub(along[i], mul(guide, e[i]));
        bias[i] = q[2] * unwinding[i] * cb + free * swinging[i] * swinging[i] +
                  guide * unwinding[i] * (DRUM * unwinding[i] * (cb - lift) - 2 * free * swinging[i] * sb);
        answer_turning[i] = times(inverse, cross(sub(at[i], centre), g[i]));
        answer[i] = sub(mul(1 / HUB_MASS, g[i]), cross(answer_turning[i], centre));
    }
    real a[2][2], b[2];
    vec carried[2];
    for (int i = 0; i < 2; i++) {
        carried[i] = add(hub, add(cross(turning, at[i]), cross(w, add(cross(w, at[i]), mul(2, velocity[i])))));
        b[i] = bias[i] - dot(g[i], carried[i]);
        for (int j = 0; j < 2; j++)
            a[i][j] = dot(g[i], add(answer[j], cross(answer_turning[j], at[i]))) + (i == j ? dot(g[i], g[i]) * (1 / WEIGHT) : 0);
    }
    real per_det = 1 / (a[0][0] * a[1][1] - a[0][1] * a[1][0]);
    real tension[2] = {(b[0] * a[1][1] - b[1] * a[0][1]) * per_det, (a[0][0] * b[1] - a[1][0] * b[0]) * per_det};
    vec more_hub = add(mul(tension[0], answer[0]), mul(tension[1], answer[1]));
    vec more_turning = add(mul(tension[0], answer_turning[0]), mul(tension[1], answer_turning[1]));
    hub = add(hub, more_hub);
    turning = add(turning, more_turning);
    for (int i = 0; i < 2; i++) {
        const real *q = y + 13 + 4 * i;
        real *p = d + 13 + 4 * i;
        vec acceleration = sub(mul(-tension[i] * (1 / WEIGHT), g[i]), add(carried[i], add(more_hub, cross(more_turning, at[i]))));
        p[0] = unwinding[i];
        p[1] = swinging[i];
        p[2] = dot(acceleration, e[i]) + unwinding[i] * (q[3] * sine[i] - inward[i] * cosine[i]);
        p[3] = dot(acceleration, across[i]) - q[2] * unwinding[i] * sine[i] - inward[i] * swinging[i];
    }
    real n = 2 / (qx * qx + qy * qy + qz * qz + qw * qw);
    d[0] = y[7];
    d[1] = y[8];
    d[2] = y[9];
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
}

/* Both. */

static void set_start(int problem, real *y)
{
    static const double planar[4] = {0.0, 0.1, 4.995695633459276, 9.995695633459276};
    static const double space[21] = {0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0.1, 0.05, 7.5};
    for (int i = 0; i < outlines[problem].dimension; i++)
        y[i] = problem == PLANAR ? planar[i] : space[i];
}

/* At the end of unwinding the planar problem's second component becomes the cord angle, which begins at zero. */
static void enter_phase(int problem, int phase, real *y)
{
    if (problem == PLANAR && phase == 1)
        y[1] = 0;
}

static inline void set_derivatives(int problem, int phase, const real *y, real *f)
{
    if (problem == PLANAR)
        planar_derivatives(phase, y, f);
    else
        space_derivatives(y, f);
}
