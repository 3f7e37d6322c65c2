/* The states at the end of both problems, to more digits than a double has: Gragg's midpoint rule, extrapolated, in
   quadruple precision on the text of equations.h. Every step length is tried twice over; the digits that are printed are
   those that stay. Build and run: gcc -O2 reference.c -lquadmath && ./a.out */
#include <quadmath.h>
#include <stdio.h>
#define REAL __float128
#define SINCOS sincosq
#include "equations.h"

enum { COLUMNS = 14 };

static void step(int problem, int phase, real length, real *y)
{
    static real table[COLUMNS][MOST_COMPONENTS];
    int n = outlines[problem].dimension;
    for (int k = 0; k < COLUMNS; k++) {
        int parts = 2 * (k + 1);
        real h = length / parts, before[MOST_COMPONENTS], here[MOST_COMPONENTS], slope[MOST_COMPONENTS];
        memcpy(before, y, sizeof before);
        set_derivatives(problem, phase, before, slope);
        for (int i = 0; i < n; i++)
            here[i] = before[i] + h * slope[i];
        for (int part = 1; part < parts; part++) {
            set_derivatives(problem, phase, here, slope);
            for (int i = 0; i < n; i++) {
                real next = before[i] + 2 * h * slope[i];
                before[i] = here[i];
                here[i] = next;
            }
        }
        /* Aitken and Neville's extrapolation in the square of the step; table[j] holds the last row's j-th entry. */
        for (int i = 0; i < n; i++) {
            real value = here[i];
            for (int j = 0; j <= k; j++) {
                real above = table[j][i], ratio = (real)parts / (2 * (k - j));
                table[j][i] = value;
                if (j < k)
                    value += (value - above) / (ratio * ratio - 1);
            }
        }
    }
    memcpy(y, table[COLUMNS - 1], n * sizeof *y);
}

static void run(int problem, int steps, real *y)
{
    const outline *o = &outlines[problem];
    set_start(problem, y);
    for (int phase = 0; phase < o->phases; phase++) {
        enter_phase(problem, phase, y);
        real length = ((real)o->times[phase + 1] - o->times[phase]) / steps;
        for (int i = 0; i < steps; i++)
            step(problem, phase, length, y);
    }
}

int main(void)
{
    for (int problem = 0; problem < PROBLEMS; problem++) {
        real coarse[MOST_COMPONENTS] = {0}, fine[MOST_COMPONENTS] = {0}, difference = 0;
        run(problem, 100, coarse);
        run(problem, 200, fine);
        for (int i = 0; i < outlines[problem].dimension; i++) {
            char text[64];
            quadmath_snprintf(text, sizeof text, "%.22Qg", fine[i]);
            printf("%s\n", text);
            difference = fmaxq(difference, fabsq(fine[i] - coarse[i]));
        }
        printf("step lengths differ by %.1e\n\n", (double)difference);
    }
    return 0;
}
