/* light_alone.c - what each source gives alone, with what the room gives back of it
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "light_alone.h"

#include "light_levels_private.h"

/**
 * lr_light_alone_n:
 * @levels: levels
 *
 * Returns: how many sources shine, and lamps of the kit are dimmed to nothing; 0: @levels are not whole
 */
guint
lr_light_alone_n (const LrLightLevels *levels)
{
  return levels->alone_lx != NULL ? levels->sources->len + levels->spares->len : 0;
}

/**
 * lr_light_alone_get:
 * @levels: whole levels
 * @index: under lr_light_alone_n()
 *
 * Returns: the source; it points into @levels
 */
LrAloneSource
lr_light_alone_get (const LrLightLevels *levels,
                    guint                index)
{
  gboolean is_out = index >= levels->sources->len;
  const LrLightSource *source = is_out ? &g_array_index (levels->spares, LrLightSource, index - levels->sources->len)
                                       : &g_array_index (levels->sources, LrLightSource, index);

  return (LrAloneSource) { source->placed, &source->emitter, is_out };
}

/* Number of a person's point among the probes; their number if there is none */
static guint
find_probe (const LrLightLevels *levels,
            const char          *person,
            LrFacePoint          point)
{
  guint i = 0;

  for (; i < levels->probes->len; i++)
    {
      const LrLightProbe *probe = &g_array_index (levels->probes, LrLightProbe, i);

      if (probe->type == LR_PROBE_FACE && probe->point == point && g_str_equal (probe->placed->item->id, person))
        break;
    }
  return i;
}

/**
 * lr_light_levels_probe:
 * @levels: levels
 * @person: id of a person
 * @point: of them
 *
 * Returns: (transfer none) (nullable): the small face on which the point's light is told
 */
const LrLightProbe *
lr_light_levels_probe (const LrLightLevels *levels,
                       const char          *person,
                       LrFacePoint          point)
{
  guint i = find_probe (levels, person, point);

  return i < levels->probes->len ? &g_array_index (levels->probes, LrLightProbe, i) : NULL;
}

/**
 * lr_light_alone_face_lx:
 * @levels: whole levels
 * @index: of a source
 * @person: id of a person
 * @point: of them
 *
 * Returns: what the source gives there alone, straight and by the room [lx]; NAN: they are not there
 */
double
lr_light_alone_face_lx (const LrLightLevels *levels,
                        guint                index,
                        const char          *person,
                        LrFacePoint          point)
{
  guint i = find_probe (levels, person, point);

  return i < levels->probes->len ? levels->alone_lx[i * lr_light_alone_n (levels) + index] : (double) NAN;
}

/**
 * lr_light_alone_walls_lx:
 * @levels: whole levels
 * @index: of a source
 * @camera: id of a camera
 * @lux: (out): what the source gives alone to the walls that the camera sees, in the mean, straight and by the room [lx]
 * @given_lx: (out): the same times what reflects it, place by place
 *
 * Returns: %FALSE, with nothing written, if the camera sees no wall
 */
gboolean
lr_light_alone_walls_lx (const LrLightLevels *levels,
                         guint                index,
                         const char          *camera,
                         double              *lux,
                         double              *given_lx)
{
  double sum_lx = 0.0, sum_given_lx = 0.0;
  guint n = 0;

  for (guint i = 0; i < levels->probes->len; i++)
    {
      const LrLightProbe *probe = &g_array_index (levels->probes, LrLightProbe, i);
      double alone_lx = levels->alone_lx[i * lr_light_alone_n (levels) + index];

      if (probe->type != LR_PROBE_BACKGROUND || !g_str_equal (probe->placed->item->id, camera))
        continue;
      sum_lx += alone_lx;
      sum_given_lx += probe->reflectance * alone_lx;
      n++;
    }
  if (n == 0)
    return FALSE;

  *lux = sum_lx / n;
  *given_lx = sum_given_lx / n;
  return TRUE;
}
