/*
 * The simulated play of a hanging load in plain C: the same equations, method, tolerance, events and random plays as the
 * one that the program runs, written by hand for one system. What it prints is compared with it, number by number.
 *
 *   cc -O2 -o swing-play swing-play.c -lm && ./swing-play PLAYS
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

enum { T, AX, JX, AY, JY, LINE, LINE_V, LINE_A, LINE_J, X, VX, Y, VY, WIDTH };
enum { SLACK, DOCK, OUTWARD, WALL, OVER, EVENTS };
enum { SIZE = 4 };

static const double gravity = 9.80665, tolerance = 1e-6;

typedef struct {
  double piece[128][WIDTH];
  int count;
} Track;

typedef struct {
  double damping, wall_x, wall_y, dock, below;
  int walled, docks;
  double now[WIDTH];
  double y[SIZE], k[7][SIZE], next[SIZE], probe[SIZE], dense[5][SIZE];
  double before[EVENTS], after[EVENTS], found[EVENTS];
  double t, step, from, wide;
  int fresh, ended, extended, lost;
  double angle, sideways, pull, touched;
} Load;

static uint32_t seed;
static double uniform(void) {
  seed += 0x6d2b79f5u;
  uint32_t t = (seed ^ (seed >> 15)) * (seed | 1u);
  t ^= t + (t ^ (t >> 7)) * (t | 61u);
  return (t ^ (t >> 14)) / 4294967296.0;
}
static double between(double a, double b) { return a + (b - a) * uniform(); }

static void clear(Track *track, double line) {
  track->count = 0;
  for (int i = 0; i < WIDTH; i++) track->piece[0][i] = 0;
  track->piece[0][LINE] = line;
}
static void add(Track *track, double time, double ax, double ay, double al) {
  if (!(time > 0)) return;
  double *p = track->piece[track->count], *n = track->piece[track->count + 1];
  p[AX] = ax; p[JX] = 0; p[AY] = ay; p[JY] = 0; p[LINE_A] = al; p[LINE_J] = 0;
  for (int i = 0; i < WIDTH; i++) n[i] = 0;
  n[T] = p[T] + time;
  n[X] = p[X] + time * (p[VX] + time * ax / 2); n[VX] = p[VX] + time * ax;
  n[Y] = p[Y] + time * (p[VY] + time * ay / 2); n[VY] = p[VY] + time * ay;
  n[LINE] = p[LINE] + time * (p[LINE_V] + time * al / 2); n[LINE_V] = p[LINE_V] + time * al;
  track->count++;
}
static void jog(Track *track, int along_x, int way, double hold, double speed, double a) {
  double v = fmin(speed, a * hold), ramp = v / a;
  add(track, ramp, along_x ? way * a : 0, along_x ? 0 : way * a, 0);
  add(track, hold - ramp, 0, 0, 0);
  add(track, ramp, along_x ? -way * a : 0, along_x ? 0 : -way * a, 0);
}
static void reel(Track *track, double distance, double speed, double a) {
  double size = fabs(distance), way = distance < 0 ? -1 : 1, v = fmin(speed, sqrt(a * size));
  add(track, v / a, 0, 0, way * a);
  add(track, size / v - v / a, 0, 0, 0);
  add(track, v / a, 0, 0, -way * a);
}

static double line_at(const Load *o, double s) {
  const double *p = o->now;
  return p[LINE] + s * (p[LINE_V] + s * (p[LINE_A] / 2 + s * p[LINE_J] / 6));
}
static double upright(const double *y) { return sqrt(1 - y[0] * y[0] - y[1] * y[1]); }
static double turning(const double *y) {
  double along = y[0] * y[2] + y[1] * y[3];
  return y[2] * y[2] + y[3] * y[3] + along * along / (1 - y[0] * y[0] - y[1] * y[1]);
}
static void derive(const Load *o, double t, const double *y, double *slope) {
  const double *p = o->now;
  double s = t - p[T], each = 1 / line_at(o, s);
  double ax = -p[AX] - s * p[JX], ay = -p[AY] - s * p[JY];
  double nx = y[0], ny = y[1], vx = y[2], vy = y[3];
  double nz = -sqrt(1 - nx * nx - ny * ny), vz = -(nx * vx + ny * vy) / nz;
  double along = (nx * ax + ny * ay - nz * gravity) * each + vx * vx + vy * vy + vz * vz;
  double drag = 2 * (p[LINE_V] + s * (p[LINE_A] + s * p[LINE_J] / 2)) * each + o->damping;
  slope[0] = vx; slope[1] = vy;
  slope[2] = ax * each - along * nx - drag * vx;
  slope[3] = ay * each - along * ny - drag * vy;
}
static double pull_at(const Load *o, double s, const double *y) {
  const double *p = o->now;
  return upright(y) * gravity - y[0] * (p[AX] + s * p[JX]) - y[1] * (p[AY] + s * p[JY]) - (p[LINE_A] + s * p[LINE_J]) +
         line_at(o, s) * turning(y);
}
static double clearance(const Load *o, double s, const double *y) {
  const double *p = o->now;
  double line = line_at(o, s);
  double x = p[X] + s * (p[VX] + s * (p[AX] / 2 + s * p[JX] / 6)) + line * y[0];
  double z = p[Y] + s * (p[VY] + s * (p[AY] / 2 + s * p[JY] / 6)) + line * y[1];
  return fmin(fmin(x + o->wall_x, o->wall_x - x), fmin(z + o->wall_y, o->wall_y - z));
}
static void measure(Load *o, double t, const double *y, double *into) {
  double s = t - o->now[T], pull = pull_at(o, s, y);
  if (pull < o->pull) o->pull = pull;
  into[SLACK] = pull;
  into[DOCK] = o->docks ? (line_at(o, s) - o->below) * upright(y) - o->dock : 1;
  into[OUTWARD] = y[0] * y[2] + y[1] * y[3];
  into[OVER] = 1 - y[0] * y[0] - y[1] * y[1] - 0.01;
  into[WALL] = o->walled ? clearance(o, s, y) : 1;
}
static double see(Load *o, double t, const double *y) {
  double s = t - o->now[T], out = sqrt(y[0] * y[0] + y[1] * y[1]), line = line_at(o, s);
  double angle = asin(fmin(1, out)), pull = pull_at(o, s, y);
  if (angle > o->angle) o->angle = angle;
  if (line * out > o->sideways) o->sideways = line * out;
  if (pull < o->pull) o->pull = pull;
  if (o->walled && isnan(o->touched) && clearance(o, s, y) < 0) o->touched = t;
  return pull;
}
static int happens(Load *o, int which, double t, const double *y) {
  if (!(see(o, t, y) > 0) || which == SLACK || which == OVER) {
    o->lost = 1;
    return 1;
  }
  if (which == WALL && isnan(o->touched)) o->touched = t;
  return which == DOCK;
}
static int crosses(int which, double before, double after) {
  (void)which; /* all of them count when they fall */
  return before > 0 && after <= 0;
}

static void extend(Load *o) {
  if (o->extended) return;
  o->extended = 1;
  double h = o->wide;
  for (int i = 0; i < SIZE; i++) {
    double rise = o->next[i] - o->y[i], bend = h * o->k[0][i] - rise;
    o->dense[0][i] = o->y[i]; o->dense[1][i] = rise; o->dense[2][i] = bend;
    o->dense[3][i] = rise - h * o->k[6][i] - bend;
    o->dense[4][i] = h * (-12715105075.0 / 11282082432 * o->k[0][i] + 87487479700.0 / 32700410799 * o->k[2][i] -
                          10690763975.0 / 1880347072 * o->k[3][i] + 701980252875.0 / 199316789632 * o->k[4][i] -
                          1453857185.0 / 822651844 * o->k[5][i] + 69997945.0 / 29380423 * o->k[6][i]);
  }
}
static void interpolate(const Load *o, double share, double *into) {
  double rest = 1 - share;
  for (int i = 0; i < SIZE; i++) {
    double inner = o->dense[3][i] + rest * o->dense[4][i];
    into[i] = o->dense[0][i] + share * (o->dense[1][i] + rest * (o->dense[2][i] + share * inner));
  }
}
static double locate(Load *o, int which, double at_from, double at_to) {
  if (at_to == 0) return 1;
  double a = 0, b = 1, fa = at_from, fb = at_to, trial[EVENTS];
  int kept = 0;
  for (int i = 0; i < 60 && b - a > 1e-13; i++) {
    double cut = (a * fb - b * fa) / (fb - fa), x = cut > a && cut < b ? cut : (a + b) / 2;
    interpolate(o, x, o->probe);
    measure(o, o->from + x * o->wide, o->probe, trial);
    double fx = trial[which];
    if (fabs(fx) < 1e-10 * fabs(at_to - at_from)) return x;
    int upper = (fx < 0) == (at_to < 0);
    if (upper) { b = x; fb = fx; if (kept == -1) fa /= 2; }
    else { a = x; fa = fx; if (kept == 1) fb /= 2; }
    kept = upper ? -1 : 1;
  }
  return b;
}
static int look(Load *o) {
  double now[EVENTS];
  int stopped = -1;
  measure(o, o->t, o->y, now);
  for (int e = 0; e < EVENTS; e++) {
    int asked = !o->fresh && stopped < 0 && e != o->ended;
    if (asked && crosses(e, o->before[e], now[e]) && happens(o, e, o->t, o->y)) stopped = e;
    if (e != o->ended) o->before[e] = now[e];
  }
  o->ended = -1; o->fresh = 0;
  return stopped;
}
static int notice(Load *o, double t, double h) {
  int some = 0;
  measure(o, t + h, o->next, o->after);
  for (int e = 0; e < EVENTS; e++) {
    o->found[e] = 2;
    if (crosses(e, o->before[e], o->after[e])) {
      extend(o);
      o->found[e] = locate(o, e, o->before[e], o->after[e]);
      some = 1;
    }
  }
  while (some) {
    int first = 0;
    for (int e = 1; e < EVENTS; e++) if (o->found[e] < o->found[first]) first = e;
    double share = o->found[first];
    if (share > 1) break;
    interpolate(o, share, o->probe);
    o->found[first] = 3;
    o->before[first] = o->after[first];
    if (happens(o, first, t + share * h, o->probe)) {
      for (int i = 0; i < SIZE; i++) o->y[i] = o->probe[i];
      o->t = t + share * h; o->ended = first;
      return first;
    }
  }
  for (int e = 0; e < EVENTS; e++) o->before[e] = o->after[e];
  return -1;
}

static long steps;
static int run(Load *o, double end) {
  double t = o->t, *y = o->y, *next = o->next;
  double(*k)[SIZE] = o->k;
  if (!(end > t)) return -1;
  derive(o, t, y, k[0]);
  int at_once = look(o);
  if (at_once >= 0) return at_once;
  double wanted = o->step;
  int again = 0;
  for (;;) {
    int last = t + wanted * 1.0001 >= end;
    double h = last ? end - t : wanted, sum = 0;
#define STAGE(expression) for (int i = 0; i < SIZE; i++) next[i] = y[i] + h * (expression)
    STAGE(1.0 / 5 * k[0][i]);
    derive(o, t + h / 5, next, k[1]);
    STAGE(3.0 / 40 * k[0][i] + 9.0 / 40 * k[1][i]);
    derive(o, t + 0.3 * h, next, k[2]);
    STAGE(44.0 / 45 * k[0][i] - 56.0 / 15 * k[1][i] + 32.0 / 9 * k[2][i]);
    derive(o, t + 0.8 * h, next, k[3]);
    STAGE(19372.0 / 6561 * k[0][i] - 25360.0 / 2187 * k[1][i] + 64448.0 / 6561 * k[2][i] - 212.0 / 729 * k[3][i]);
    derive(o, t + 8.0 / 9 * h, next, k[4]);
    STAGE(9017.0 / 3168 * k[0][i] - 355.0 / 33 * k[1][i] + 46732.0 / 5247 * k[2][i] + 49.0 / 176 * k[3][i] - 5103.0 / 18656 * k[4][i]);
    derive(o, t + h, next, k[5]);
    STAGE(35.0 / 384 * k[0][i] + 500.0 / 1113 * k[2][i] + 125.0 / 192 * k[3][i] - 2187.0 / 6784 * k[4][i] + 11.0 / 84 * k[5][i]);
    derive(o, t + h, next, k[6]);
    for (int i = 0; i < SIZE; i++) {
      double off = h * (71.0 / 57600 * k[0][i] - 71.0 / 16695 * k[2][i] + 71.0 / 1920 * k[3][i] - 17253.0 / 339200 * k[4][i] +
                        22.0 / 525 * k[5][i] - 1.0 / 40 * k[6][i]);
      double share = off / (tolerance * (1 + fmax(fabs(y[i]), fabs(next[i]))));
      sum += share * share;
    }
    double error = sum / SIZE;
    if (!(error <= 1)) {
      wanted = h / (error < 1e18 ? fmin(5, pow(error, 0.1) / 0.9) : 10);
      again = 1;
      continue;
    }
    steps++;
    o->from = t; o->wide = h; o->extended = 0;
    int stopped = notice(o, t, h);
    if (stopped >= 0) { o->step = wanted; return stopped; }
    t = last ? end : t + h;
    for (int i = 0; i < SIZE; i++) { y[i] = next[i]; k[0][i] = k[6][i]; }
    double grow = fmin(8, 0.9 * pow(error, -0.1)), proposed = h * (again ? fmin(1, grow) : grow);
    wanted = last ? fmax(wanted, proposed) : proposed;
    again = 0;
    if (last) { o->t = t; o->step = wanted; return -1; }
  }
}
static void enter(Load *o, const Track *track, int piece) {
  for (int i = 0; i < WIDTH; i++) o->now[i] = track->piece[piece][i];
}
static void hang(Load *o, const Track *track, double x, double y) {
  enter(o, track, 0);
  o->y[0] = x / o->now[LINE]; o->y[1] = y / o->now[LINE]; o->y[2] = o->y[3] = 0;
  o->t = 0; o->step = 0.02; o->fresh = 1; o->ended = -1; o->lost = 0;
  o->angle = o->sideways = 0; o->pull = INFINITY; o->touched = NAN;
}
static int follow(Load *o, const Track *track) {
  for (int piece = 0; piece < track->count; piece++) {
    enter(o, track, piece);
    see(o, o->t, o->y);
    int stopped = run(o, track->piece[piece + 1][T]);
    if (stopped >= 0) return stopped;
    see(o, o->t, o->y);
  }
  enter(o, track, track->count);
  return -1;
}

int main(int argc, char **argv) {
  int plays = argc > 1 ? atoi(argv[1]) : 2000;
  const double up = 0.14, down = 0.84, below = 0.07, scatter = 0.012, reach = 0.02, fading = 30;
  const double speed = 0.22, a = 0.7, hoist_speed = 0.16, hoist_a = 0.5, travel[2] = {0.56, 0.4}, room = 0.1;
  static Load driving, rising;
  static Track way, hoist;
  driving.damping = rising.damping = 2 / fading;
  driving.below = rising.below = below;
  driving.walled = 1; driving.wall_x = travel[0] / 2 + room; driving.wall_y = travel[1] / 2 + room;
  rising.docks = 1; rising.dock = up;
  seed = 1;
  double time = 0, offsets = 0, shortest = INFINITY;
  int misses = 0, touches = 0;
  struct timespec from, to;
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &from);
  for (int n = 0; n < plays; n++) {
    double whole = down + below, brief = up + below, landing = whole - between(0, 0);
    double far = sqrt(-2 * log(1 - uniform())), turn = 2 * M_PI * uniform();
    double off_x = scatter * (far * cos(turn)), off_y = scatter * (far * sin(turn));
    clear(&way, brief);
    int count = (int)floor(between(6, 7)), along_x = uniform() < 0.5;
    for (int i = 0; i < count; i++) {
      double at = way.piece[way.count][along_x ? X : Y], hold = between(0.35, 0.6), end = travel[along_x ? 0 : 1] / 2;
      int wish = uniform() < 0.5 ? -1 : 1;
      double ahead = speed * hold;
      int turned = fabs(at + wish * ahead) > end ? -wish : wish;
      if (fabs(at + turned * ahead) <= end) jog(&way, along_x, turned, hold, speed, a);
      add(&way, between(0.35, 0.45), 0, 0, 0);
      along_x = !along_x;
    }
    reel(&way, landing - brief, hoist_speed, hoist_a);
    hang(&driving, &way, 0, 0);
    follow(&driving, &way);
    if (!isnan(driving.touched)) touches++;
    off_x += landing * driving.y[0];
    off_y += landing * driving.y[1];
    double shrink = fmin(1, 0.5 * landing / hypot(off_x, off_y));
    clear(&hoist, landing);
    reel(&hoist, brief - landing, hoist_speed, hoist_a);
    hang(&rising, &hoist, shrink * off_x, shrink * off_y);
    follow(&rising, &hoist);
    int lost = driving.lost || rising.lost;
    double out = sqrt(rising.y[0] * rising.y[0] + rising.y[1] * rising.y[1]);
    double offset = lost ? INFINITY : (line_at(&rising, rising.t - rising.now[T]) - below) * out;
    if (lost || !(offset <= reach)) misses++;
    offsets += offset;
    time += driving.t + rising.t;
    shortest = fmin(shortest, driving.t + rising.t);
  }
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &to);
  double taken = to.tv_sec - from.tv_sec + 1e-9 * (to.tv_nsec - from.tv_nsec);
  printf("{\"plays\":%d,\"seconds\":%.6f,\"simulated\":%.9f,\"shortest\":%.6f,\"steps\":%ld,\"misses\":%d,\"touches\":%d,\"offset\":%.12f}\n",
         plays, taken, time / plays, shortest, steps / plays, misses, touches, offsets / plays);
  return 0;
}
