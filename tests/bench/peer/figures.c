/*
 * The figures of a candidate in C: a peer for the bench to run beside. It goes by kinds of threads as the program does,
 * but shares no code with it, and remembers nothing from one candidate to the next but the weights of the blurs.
 *
 *   figures FILE SECONDS [look]
 *
 * FILE holds whole numbers of 32 bits: how many candidates, then of each: ends, picks, kinds of ends, kinds of picks, the
 * kind of each end, of each pick, 1 or 0 for each kind of pick by each kind of end, the colour (0 dark, 1 light) of each
 * end and of each pick. Printed are the microseconds of user time a candidate, the least of several rounds, and for each
 * candidate tone, line, figure, dark share, symmetry (cells square), with `look` also solid areas and crispness of
 * outlines, and a number equal for equal cloths (mirrors, half turns and exchange allowed).
 */
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>

enum { N = 512, K = 64, E = 512 };

typedef struct {
  int ends, picks, endKinds, pickKinds;
  const int32_t *endKind, *pickKind, *up, *warp, *weft;
} Draft;

typedef struct {
  int length, kinds;
  int word[N];
} Word;

typedef struct {
  Word rows, columns;
  uint8_t cell[K][K]; /* [row kind][column kind] */
} Face;

/* ---- the face, by kinds of rows and columns that look different ---- */

static void strands(const int32_t *weave, const int32_t *colour, int length, Word *word, int *ofWeave, int *ofColour) {
  int known[2 * K];
  memset(known, -1, sizeof known);
  word->length = length;
  word->kinds = 0;
  for (int s = 0; s < length; s++) {
    int sign = weave[s] * 2 + colour[s];
    if (known[sign] < 0) {
      ofWeave[word->kinds] = weave[s];
      ofColour[word->kinds] = colour[s];
      known[sign] = word->kinds++;
    }
    word->word[s] = known[sign];
  }
}

static void makeFace(const Draft *d, Face *f) {
  int weaveC[K], colourC[K], weaveR[K], colourR[K], to[K], kept[K];
  strands(d->endKind, d->warp, d->ends, &f->columns, weaveC, colourC);
  strands(d->pickKind, d->weft, d->picks, &f->rows, weaveR, colourR);
  int R = f->rows.kinds, C = f->columns.kinds;
  uint64_t rowBits[K] = {0}, columnBits[K] = {0};
  for (int r = 0; r < R; r++)
    for (int c = 0; c < C; c++) {
      uint64_t cell = d->up[weaveR[r] * d->endKinds + weaveC[c]] ? colourC[c] : colourR[r];
      rowBits[r] |= cell << c;
      columnBits[c] |= cell << r;
    }
  int rows = 0, columns = 0, keptColumns[K];
  for (int r = 0; r < R; r++) {
    int k = 0;
    while (k < rows && rowBits[kept[k]] != rowBits[r]) k++;
    if (k == rows) kept[rows++] = r;
    to[r] = k;
  }
  if (rows < R) for (int j = 0; j < d->picks; j++) f->rows.word[j] = to[f->rows.word[j]];
  for (int c = 0; c < C; c++) {
    int k = 0;
    while (k < columns && columnBits[keptColumns[k]] != columnBits[c]) k++;
    if (k == columns) keptColumns[columns++] = c;
    to[c] = k;
  }
  if (columns < C) for (int i = 0; i < d->ends; i++) f->columns.word[i] = to[f->columns.word[i]];
  f->rows.kinds = rows;
  f->columns.kinds = columns;
  for (int r = 0; r < rows; r++)
    for (int c = 0; c < columns; c++) f->cell[r][c] = rowBits[kept[r]] >> keptColumns[c] & 1;
}

/* ---- contrast ---- */

typedef struct {
  int known;
  double tone[N], edges[N], cross[N], small[N], areas[N];
} Reach;

static void blur(int n, double sigma, double *w) {
  double sum = 0;
  int reach = (int)ceil(4 * sigma - 1e-9) + 1;
  memset(w, 0, sizeof(double) * n);
  for (int d = -reach; d <= reach; d++) {
    double share = (erfc(-(d + 0.5) / sigma * M_SQRT1_2) - erfc(-(d - 0.5) / sigma * M_SQRT1_2)) / 2;
    w[((d % n) + n) % n] += share;
    sum += share;
  }
  for (int d = 0; d < n; d++) w[d] /= sum;
}

static void overlap(int n, double sigma, double *to) {
  double w[N];
  blur(n, sigma, w);
  for (int d = 0; d < n; d++) {
    to[d] = 0;
    for (int x = 0; x < n; x++) to[d] += w[x] * w[(x + d) % n];
  }
}

static const Reach *reachOf(int n) {
  static Reach all[N + 1];
  Reach *reach = &all[n];
  if (!reach->known) {
    overlap(n, 1.5, reach->tone);
    overlap(n, 0.5, reach->small);
    blur(n, 2, reach->areas);
    for (int d = 0; d < n; d++) {
      double before = reach->tone[(d + n - 1) % n], after = reach->tone[(d + 1) % n];
      reach->edges[d] = reach->tone[d] / 2 + (before + after) / 4;
      reach->cross[d] = (reach->tone[d] + before) / 2;
    }
    reach->known = 1;
  }
  return reach;
}

static void gather(const double *weight, int n, const int *a, int kindsA, const int *b, int kindsB, double *sum) {
  memset(sum, 0, sizeof(double) * kindsA * kindsB);
  for (int d = 0; d < n; d++) {
    double w = weight[d];
    if (w == 0) continue;
    for (int s = 0, t = d; s < n; s++) {
      sum[a[t] * kindsB + b[s]] += w;
      if (++t == n) t = 0;
    }
  }
}

static void gatherEven(const double *weight, int n, const int *kind, int kinds, double *sum) {
  memset(sum, 0, sizeof(double) * kinds * kinds);
  for (int d = 0; d <= n / 2; d++) {
    double w = d == 0 || 2 * d == n ? weight[d] / 2 : weight[d];
    if (w == 0) continue;
    for (int s = 0, t = d; s < n; s++) {
      sum[kind[t] * kinds + kind[s]] += w;
      if (++t == n) t = 0;
    }
  }
  for (int a = 0; a < kinds; a++)
    for (int b = 0; b <= a; b++) sum[a * kinds + b] = sum[b * kinds + a] = sum[a * kinds + b] + sum[b * kinds + a];
}

static double roomP[E * K], roomQ[E * K];

/* a is n × rows, read turned over its diagonal */
static void multiplyTurned(const double *restrict a, const double *restrict x, int n, int rows, int columns, double *restrict p) {
  for (int r = 0; r < rows; r++) {
    double *restrict to = p + r * columns;
    for (int c = 0; c < columns; c++) to[c] = 0;
    for (int j = 0; j < n; j++) {
      double w = a[j * rows + r];
      for (int c = 0; c < columns; c++) to[c] += w * x[j * columns + c];
    }
  }
}

static void multiply(const double *restrict y, const double *restrict b, int m, int rows, int columns, double *restrict q) {
  for (int r = 0; r < rows; r++) {
    double *restrict to = q + r * columns;
    for (int c = 0; c < columns; c++) to[c] = 0;
    for (int k = 0; k < m; k++) {
      double w = y[r * m + k];
      for (int c = 0; c < columns; c++) to[c] += w * b[k * columns + c];
    }
  }
}

static double meet(const double *a, const double *x, int n, const double *y, const double *b, int m, int rows, int columns) {
  multiplyTurned(a, x, n, rows, columns, roomP);
  multiply(y, b, m, rows, columns, roomQ);
  double sum = 0;
  for (int at = 0; at < rows * columns; at++) sum += roomP[at] * roomQ[at];
  return sum;
}

static double energy(const double *w, const double *g, const double *v, int rows, int columns) {
  return meet(w, g, rows, g, v, columns, rows, columns);
}

static double centre(double *field, const int *rowCount, int rows, const int *columnCount, int columns, double cells) {
  double sum = 0;
  for (int r = 0; r < rows; r++) {
    double inRow = 0;
    for (int c = 0; c < columns; c++) inRow += field[r * columns + c] * columnCount[c];
    sum += inRow * rowCount[r];
  }
  for (int at = 0; at < rows * columns; at++) field[at] -= sum / cells;
  return sum / cells;
}

static void count(const int *word, int n, int kinds, int *counts) {
  memset(counts, 0, sizeof(int) * kinds);
  for (int s = 0; s < n; s++) counts[word[s]]++;
}

typedef struct {
  int kinds, of[N], before[N], after[N], counts[N];
} Boundaries;

static void boundaries(const Word *word, Boundaries *b) {
  static int known[K * K];
  memset(known, -1, sizeof(int) * word->kinds * word->kinds);
  b->kinds = 0;
  for (int s = 0; s < word->length; s++) {
    int before = word->word[s == 0 ? word->length - 1 : s - 1], after = word->word[s], *number = &known[before * word->kinds + after];
    if (*number < 0) {
      b->before[b->kinds] = before;
      b->after[b->kinds] = after;
      *number = b->kinds++;
    }
    b->of[s] = *number;
  }
  count(b->of, word->length, b->kinds, b->counts);
}

static double deviation(double squares, double cells) { return squares / cells < 1e-15 ? 0 : sqrt(squares / cells); }

typedef struct {
  double tone, line, figure, dark, symmetry, solid, sharp;
  uint64_t key;
} Figures;

static void contrast(const Face *f, Figures *to) {
  static double g[K * K], W[K * K], V[K * K], x[E * K], y[E * K], edgesW[E * E], edgesV[E * E], crossW[E * K], crossV[E * K];
  static Boundaries upright, level;
  int R = f->rows.kinds, C = f->columns.kinds, ends = f->columns.length, picks = f->rows.length, rowCount[K], columnCount[K];
  double cells = (double)ends * picks;
  const Reach *h = reachOf(ends), *v = reachOf(picks);
  count(f->rows.word, picks, R, rowCount);
  count(f->columns.word, ends, C, columnCount);
  gatherEven(v->tone, picks, f->rows.word, R, W);
  gatherEven(h->tone, ends, f->columns.word, C, V);
  for (int r = 0; r < R; r++)
    for (int c = 0; c < C; c++) g[r * C + c] = f->cell[r][c];

  boundaries(&f->columns, &upright);
  boundaries(&f->rows, &level);
  for (int r = 0; r < R; r++)
    for (int e = 0; e < upright.kinds; e++) x[r * upright.kinds + e] = f->cell[r][upright.before[e]] != f->cell[r][upright.after[e]];
  for (int e = 0; e < level.kinds; e++)
    for (int c = 0; c < C; c++) y[e * C + c] = f->cell[level.before[e]][c] != f->cell[level.after[e]][c];
  double meanX = centre(x, rowCount, R, upright.counts, upright.kinds, cells);
  double meanY = centre(y, level.counts, level.kinds, columnCount, C, cells);
  to->line = 0;
  if (meanX != 0 || meanY != 0) {
    gatherEven(h->edges, ends, upright.of, upright.kinds, edgesV);
    gatherEven(v->edges, picks, level.of, level.kinds, edgesW);
    gather(v->cross, picks, level.of, level.kinds, f->rows.word, R, crossW);
    gather(h->cross, ends, upright.of, upright.kinds, f->columns.word, C, crossV);
    double hh = energy(W, x, edgesV, R, upright.kinds), uu = energy(edgesW, y, V, level.kinds, C);
    double both = meet(crossW, y, level.kinds, x, crossV, upright.kinds, R, C);
    to->line = deviation(uu + hh - 2 * both, cells);
  }
  to->dark = 1 - centre(g, rowCount, R, columnCount, C, cells);
  to->tone = 2 * deviation(energy(W, g, V, R, C), cells);

  gatherEven(v->small, picks, f->rows.word, R, W);
  gatherEven(h->small, ends, f->columns.word, C, V);
  double variance = energy(W, g, V, R, C) / cells, byRows = 0, byColumns = 0, rowMean[K] = {0}, columnMean[K] = {0};
  for (int r = 0; r < R; r++)
    for (int c = 0; c < C; c++) {
      rowMean[r] += g[r * C + c] * columnCount[c] / ends;
      columnMean[c] += g[r * C + c] * rowCount[r] / picks;
    }
  for (int a = 0; a < R; a++)
    for (int b = 0; b < R; b++) byRows += W[a * R + b] * rowMean[a] * rowMean[b];
  for (int a = 0; a < C; a++)
    for (int b = 0; b < C; b++) byColumns += V[a * C + b] * columnMean[a] * columnMean[b];
  to->figure = variance < 1e-6 ? 0 : fmin(1, fmax(0, 1 - (byRows / picks + byColumns / ends) / variance));
}

/* ---- areas and outlines, of the values blurred over two ends ---- */

static double light[N * N], slopes[4 * N * N];
static uint8_t side[N * N];

/* How much of each kind is near each thread. */
static void nearby(const double *weight, const Word *word, double *near) {
  int n = word->length, kinds = word->kinds, taps = 0, place[N];
  for (int d = 0; d < n; d++) if (weight[d] != 0) place[taps++] = d;
  memset(near, 0, sizeof(double) * n * kinds);
  for (int s = 0; s < n; s++)
    for (int t = 0; t < taps; t++) {
      int at = s + place[t];
      near[s * kinds + word->word[at < n ? at : at - n]] += weight[place[t]];
    }
}

/* The number that is at place k when they are sorted. */
static double numberAt(double *numbers, int count, int k) {
  int from = 0, to = count - 1;
  while (from < to) {
    double pivot = numbers[(from + to) / 2];
    int i = from, j = to;
    while (i <= j) {
      while (numbers[i] < pivot) i++;
      while (numbers[j] > pivot) j--;
      if (i > j) break;
      double moved = numbers[i];
      numbers[i++] = numbers[j];
      numbers[j--] = moved;
    }
    if (k <= j) to = j;
    else if (k >= i) from = i;
    else break;
  }
  return numbers[k];
}

static double slopeAt(int row, int above, int below, int i, int ends) {
  double across = light[row + (i + 1 == ends ? 0 : i + 1)] - light[row + (i == 0 ? ends - 1 : i - 1)];
  double along = light[below + i] - light[above + i];
  return across * across + along * along;
}

static void look(const Face *f, Figures *to) {
  static double nearRows[N * K], nearColumns[N * K], byRow[K * N];
  int R = f->rows.kinds, C = f->columns.kinds, ends = f->columns.length, picks = f->rows.length, cells = ends * picks;
  nearby(reachOf(picks)->areas, &f->rows, nearRows);
  nearby(reachOf(ends)->areas, &f->columns, nearColumns);
  for (int r = 0; r < R; r++)
    for (int i = 0; i < ends; i++) {
      double sum = 0;
      for (int c = 0; c < C; c++) sum += f->cell[r][c] ? nearColumns[i * C + c] : 0;
      byRow[r * ends + i] = sum;
    }
  for (int j = 0; j < picks; j++) {
    double *restrict row = light + j * ends;
    memset(row, 0, sizeof(double) * ends);
    for (int r = 0; r < R; r++)
      for (int i = 0; i < ends; i++) row[i] += nearRows[j * R + r] * byRow[r * ends + i];
  }
  double least = INFINITY, most = -INFINITY;
  int dark = 0, bright = 0, count = 0, last = cells - ends;
  for (int at = 0; at < cells; at++) {
    least = light[at] < least ? light[at] : least;
    most = light[at] > most ? light[at] : most;
    dark += light[at] < 0.15;
    bright += light[at] > 0.85;
  }
  double middle = (least + most) / 2;
  for (int at = 0; at < cells; at++) side[at] = (light[at] - middle > -1e-9) + (light[at] - middle >= 1e-9);
  for (int row = 0; row < cells; row += ends) {
    int above = row == 0 ? last : row - ends, below = row == last ? 0 : row + ends;
    int under = below == last ? 0 : below + ends;
    for (int i = 0; i < ends; i++) {
      int right = i + 1 == ends ? 0 : i + 1;
      if (side[row + i] != side[row + right]) {
        slopes[count++] = slopeAt(row, above, below, i, ends);
        slopes[count++] = slopeAt(row, above, below, right, ends);
      }
      if (side[row + i] != side[below + i]) {
        slopes[count++] = slopeAt(row, above, below, i, ends);
        slopes[count++] = slopeAt(below, row, under, i, ends);
      }
    }
  }
  to->solid = 2.0 * (dark < bright ? dark : bright) / cells;
  to->sharp = 0;
  if (count == 0) return;
  double upper = numberAt(slopes, count, count / 2), lower = 0;
  for (int k = 0; k < count / 2; k++) lower = slopes[k] > lower ? slopes[k] : lower;
  to->sharp = fmin(1, (sqrt(lower) + sqrt(upper)) / 4 * 2 * sqrt(2 * M_PI));
}

/* ---- symmetry and the canonical cloth ---- */

typedef struct {
  int letters[2 * N], start, step;
} Reading;

typedef struct {
  int length, kinds, word[2 * N], first[K];
  Reading forward, backward;
} Side;

static int period(const int *word, int n) {
  static int border[N];
  border[0] = 0;
  for (int i = 1, k = 0; i < n; i++) {
    while (k > 0 && word[i] != word[k]) k = border[k - 1];
    if (word[i] == word[k]) k++;
    border[i] = k;
  }
  int p = n - border[n - 1];
  return n % p ? n : p;
}

/* The rotation that sorts first, and after how many places the letters repeat. */
static void least(Reading *reading, int n) {
  const int *l = reading->letters;
  int start = 0, rival = 1, same = 0;
  while (rival < n && same < n) {
    int difference = l[start + same] - l[rival + same];
    if (difference == 0) {
      same++;
      continue;
    }
    if (difference < 0)
      rival += same + 1;
    else {
      start = start + same + 1 > rival ? start + same + 1 : rival;
      rival = start + 1;
    }
    same = 0;
  }
  reading->start = start;
  reading->step = rival < n ? rival - start : n;
}

/* Letters: the distance to the next thread of the same kind, below a mark of what the kind shows. */
static void makeSide(const Word *word, const int *ones, int crossing, Side *side) {
  int last[K], n = side->length = period(word->word, word->length);
  side->kinds = word->kinds;
  for (int at = 0; at < n; at++) {
    side->word[at] = side->word[at + n] = word->word[at];
    last[word->word[at]] = at - n;
  }
  for (int at = 0; at < n; at++) {
    int kind = word->word[at], before = last[kind], mark = ones[kind] * (crossing - ones[kind]) << 16;
    last[kind] = at;
    if (before < 0) side->first[kind] = at;
    int f = before < 0 ? before + n : before, b = at == 0 ? 0 : n - at;
    side->forward.letters[f] = side->forward.letters[f + n] = (at - before) | mark;
    side->backward.letters[b] = side->backward.letters[b + n] = (at - before) | mark;
  }
  least(&side->forward, n);
  least(&side->backward, n);
}

static int compare(const Reading *a, int n, const Reading *b, int m) {
  if (n != m) return n - m;
  for (int at = 0; at < n; at++) {
    int difference = a->letters[a->start + at] - b->letters[b->start + at];
    if (difference) return difference;
  }
  return 0;
}

static uint8_t cells[K * K], turned[K * K];

/* 1 where the map carries the face to itself, −1 where with the two colours exchanged, 0 where not. */
static int carries(const Side *rows, const Side *columns, int turn, int across, int along, int x, int y) {
  const uint8_t *source = turn ? turned : cells;
  const Side *down = turn ? columns : rows, *level = turn ? rows : columns;
  int fromX = across == 1 ? x : x + columns->length, fromY = along == 1 ? y : y + rows->length, sign = 0;
  for (int u = 0, at = 0; u < down->kinds; u++) {
    const uint8_t *row = cells + rows->word[fromY + along * down->first[u]] * columns->kinds;
    for (int v = 0; v < level->kinds; v++, at++) {
      int same = row[columns->word[fromX + across * level->first[v]]] == source[at] ? 1 : -1;
      if (same == sign) continue;
      if (sign) return 0;
      sign = same;
    }
  }
  return sign;
}

/* The place to which place 0 of `from` must go for its letters to meet those of `to`; −1 if they differ. */
static int firstStep(const Side *from, const Side *to, int sign) {
  const Reading *target = sign == 1 ? &to->forward : &to->backward;
  if (compare(&from->forward, from->length, target, to->length)) return -1;
  int by = sign == 1 ? target->start - from->forward.start : from->forward.start - target->start;
  return by < 0 ? by + to->length : by;
}

static void orders(const Side *side, int backward, int start, int *to) {
  uint64_t seen = 0;
  int n = side->length;
  for (int at = start % n, written = 0; written < side->kinds; at++) {
    int kind = side->word[backward ? (2 * n - at) % n : at];
    if (seen >> kind & 1) continue;
    seen |= (uint64_t)1 << kind;
    to[written++] = kind;
  }
}

static uint64_t mix(uint64_t hash, uint64_t word) {
  hash = (hash ^ word) * 0x9e3779b97f4a7c15u;
  return hash ^ hash >> 29;
}

static void symmetry(const Face *f, Figures *to) {
  static Side rows, columns;
  static uint8_t best[K * K];
  int R = f->rows.kinds, C = f->columns.kinds, rowOnes[K] = {0}, columnOnes[K] = {0}, all = 0;
  for (int r = 0; r < R; r++)
    for (int c = 0; c < C; c++) {
      int cell = f->cell[r][c];
      cells[r * C + c] = turned[c * R + r] = cell;
      rowOnes[r] += cell;
      columnOnes[c] += cell;
      all += cell;
    }
  makeSide(&f->rows, rowOnes, C, &rows);
  makeSide(&f->columns, columnOnes, R, &columns);
  int shown = all == 0 || all == R * C ? 1 : 2;

  int height = rows.length, exchange = 0;
  for (int y = 0; y < height; y += rows.forward.step)
    for (int x = y ? 0 : columns.forward.step; x < columns.length; x += columns.forward.step) {
      int sign = carries(&rows, &columns, 0, 1, 1, x, y);
      if (sign == 1) height = y;
      if (sign == -1) exchange = 1;
    }
  static const int MAPS[7][3] = {{0, -1, -1}, {0, -1, 1}, {0, 1, -1}, {1, -1, 1}, {1, 1, -1}, {1, 1, 1}, {1, -1, -1}};
  int held = 1;
  for (int m = 0; m < (rows.length == columns.length ? 7 : 3); m++) {
    int turn = MAPS[m][0], across = MAPS[m][1], along = MAPS[m][2], found = 0;
    int y = firstStep(turn ? &columns : &rows, &rows, along), x = firstStep(turn ? &rows : &columns, &columns, across);
    if (x < 0 || y < 0) continue;
    for (int b = y % rows.forward.step; b < height && !found; b += rows.forward.step)
      for (int a = x % columns.forward.step; a < columns.length && !found; a += columns.forward.step)
        found = carries(&rows, &columns, turn, across, along, a, b);
    held += found != 0;
  }
  to->symmetry = (log2(held) + exchange) / 4;

  /* The view whose letters sort first, then of the cells in order of first appearance those that sort first. */
  int byRow = compare(&rows.forward, rows.length, &rows.backward, rows.length);
  int byColumn = compare(&columns.forward, columns.length, &columns.backward, columns.length);
  memset(best, 255, R * C);
  for (int view = 0; view < 4; view++) {
    int up = view & 1, left = view >> 1;
    if ((up ? byRow < 0 : byRow > 0) || (left ? byColumn < 0 : byColumn > 0)) continue;
    const Reading *down = up ? &rows.backward : &rows.forward, *level = left ? &columns.backward : &columns.forward;
    for (int u = 0; u < height; u += down->step) {
      int downOrder[K], levelOrder[K];
      orders(&rows, up, down->start + u, downOrder);
      for (int v = 0; v < columns.length; v += level->step) {
        orders(&columns, left, level->start + v, levelOrder);
        for (int flip = 0; flip <= (shown == 2 && !exchange); flip++) {
          int before = 0;
          for (int r = 0, at = 0; r < R; r++)
            for (int c = 0; c < C; c++, at++) {
              uint8_t cell = cells[downOrder[r] * C + levelOrder[c]] ^ flip;
              if (!before && cell > best[at]) goto later;
              before |= cell < best[at];
              best[at] = cell;
            }
        later:;
        }
      }
    }
  }
  uint64_t key = mix(mix(1, rows.length), columns.length * 4 + shown);
  const Reading *down = byRow <= 0 ? &rows.forward : &rows.backward, *level = byColumn <= 0 ? &columns.forward : &columns.backward;
  for (int at = 0; at < rows.length; at++) key = mix(key, down->letters[down->start + at]);
  for (int at = 0; at < columns.length; at++) key = mix(key, level->letters[level->start + at]);
  for (int at = 0; at < R * C && shown == 2; at++) key = mix(key, best[at]);
  to->key = key;
}

static double userMicroseconds(void) {
  struct rusage usage;
  getrusage(RUSAGE_SELF, &usage);
  return usage.ru_utime.tv_sec * 1e6 + usage.ru_utime.tv_usec;
}

int main(int count, char **given) {
  FILE *file = count == 3 || count == 4 ? fopen(given[1], "rb") : NULL;
  if (!file) return fprintf(stderr, "usage: figures FILE SECONDS [look]\n"), 2;
  int looks = count == 4;
  fseek(file, 0, SEEK_END);
  long size = ftell(file);
  rewind(file);
  int32_t *numbers = malloc(size), *at = numbers;
  if (fread(numbers, 1, size, file) != (size_t)size) return 2;
  int candidates = *at++;
  Draft *drafts = malloc(sizeof(Draft) * candidates);
  Figures *figures = malloc(sizeof(Figures) * candidates);
  for (int k = 0; k < candidates; k++) {
    Draft *d = &drafts[k];
    d->ends = *at++, d->picks = *at++, d->endKinds = *at++, d->pickKinds = *at++;
    d->endKind = at, at += d->ends;
    d->pickKind = at, at += d->picks;
    d->up = at, at += d->endKinds * d->pickKinds;
    d->warp = at, at += d->ends;
    d->weft = at, at += d->picks;
    if (d->ends > N || d->picks > N || 2 * d->endKinds > K || 2 * d->pickKinds > K) return fprintf(stderr, "too large\n"), 2;
  }
  static Face face;
  double leastTime = INFINITY, began = userMicroseconds();
  do {
    double from = userMicroseconds();
    int times = 0;
    do {
      for (int k = 0; k < candidates; k++) {
        makeFace(&drafts[k], &face);
        contrast(&face, &figures[k]);
        symmetry(&face, &figures[k]);
        if (looks) look(&face, &figures[k]);
      }
      times++;
    } while (userMicroseconds() - from < 50000);
    leastTime = fmin(leastTime, (userMicroseconds() - from) / times / candidates);
  } while (userMicroseconds() - began < 1e6 * atof(given[2]));
  printf("%.3f\n", leastTime);
  for (int k = 0; k < candidates; k++) {
    Figures *f = &figures[k];
    printf("%.17g %.17g %.17g %.17g %.17g ", f->tone, f->line, f->figure, f->dark, f->symmetry);
    if (looks) printf("%.17g %.17g ", f->solid, f->sharp);
    printf("%016llx\n", (unsigned long long)f->key);
  }
  return 0;
}
