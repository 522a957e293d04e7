/* marks.c - geometry that a remark highlights on the sheet
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "judge_parts.h"

#define ARC_SHARE 0.55 /* of the way to the nearer end: clear of heads and tripods */
#define ARC_MAX_M 1.2

static LrMark *
add (LrRemark   *remark,
     LrMarkType  type,
     const char *figure)
{
  LrMark mark = { .type = type, .figure = g_strdup (figure) };

  g_array_append_val (remark->marks, mark);
  return &g_array_index (remark->marks, LrMark, remark->marks->len - 1);
}

/**
 * lr_remark_mark_line:
 * @remark: a remark
 * @a_m: one end [m]
 * @b_m: the other [m]
 * @figure: (nullable): what stands beside it
 *
 * Marks a line on the floor.
 */
void
lr_remark_mark_line (LrRemark   *remark,
                     LrVec2      a_m,
                     LrVec2      b_m,
                     const char *figure)
{
  LrMark *mark = add (remark, LR_MARK_LINE, figure);

  mark->a_m = a_m;
  mark->b_m = b_m;
}

/**
 * lr_remark_mark_distance:
 * @remark: a remark
 * @a_m: one end [m]
 * @b_m: the other [m]
 * @figure: (nullable): what stands beside it
 *
 * Marks a distance on the floor, as a dimension line.
 */
void
lr_remark_mark_distance (LrRemark   *remark,
                         LrVec2      a_m,
                         LrVec2      b_m,
                         const char *figure)
{
  LrMark *mark = add (remark, LR_MARK_DISTANCE, figure);

  mark->a_m = a_m;
  mark->b_m = b_m;
}

/**
 * lr_remark_mark_point:
 * @remark: a remark
 * @at_m: a place [m]
 * @figure: (nullable): what stands beside it
 *
 * Marks a place on the floor.
 */
void
lr_remark_mark_point (LrRemark   *remark,
                      LrVec2      at_m,
                      const char *figure)
{
  add (remark, LR_MARK_POINT, figure)->a_m = at_m;
}

/**
 * lr_remark_mark_outline:
 * @remark: a remark
 * @outline: a footprint
 * @figure: (nullable): what stands beside it
 *
 * Marks the floor that a thing takes.
 */
void
lr_remark_mark_outline (LrRemark        *remark,
                        const LrOutline *outline,
                        const char      *figure)
{
  LrMark *mark = add (remark, LR_MARK_OUTLINE, figure);

  mark->a_m = outline->centre_m;
  mark->outline = *outline;
}

/**
 * lr_remark_mark_arc:
 * @remark: a remark
 * @centre_m: whence the angle is seen [m]
 * @a_m: a place on one leg [m]
 * @b_m: a place on the other [m]
 * @figure: (nullable): what stands beside it
 *
 * Marks the angle between the ways to two places, the shorter way round, clear of what stands at them.
 */
void
lr_remark_mark_arc (LrRemark   *remark,
                    LrVec2      centre_m,
                    LrVec2      a_m,
                    LrVec2      b_m,
                    const char *figure)
{
  LrMark *mark = add (remark, LR_MARK_ARC, figure);
  LrVec2 to_a = lr_vec2_sub (a_m, centre_m), to_b = lr_vec2_sub (b_m, centre_m);
  double from_rad = lr_vec2_angle_rad (to_a);
  double turn_rad = lr_angle_wrap_rad (lr_vec2_angle_rad (to_b) - from_rad);

  mark->a_m = centre_m;
  mark->from_rad = turn_rad >= 0.0 ? from_rad : from_rad + turn_rad;
  mark->to_rad = mark->from_rad + fabs (turn_rad);
  mark->radius_m = fmin (ARC_MAX_M, ARC_SHARE * fmin (lr_vec2_length (to_a), lr_vec2_length (to_b)));
}

/**
 * lr_mark_clear:
 * @mark: an #LrMark
 *
 * Clear function of an array of marks.
 */
void
lr_mark_clear (gpointer mark)
{
  g_free (((LrMark *) mark)->figure);
}
