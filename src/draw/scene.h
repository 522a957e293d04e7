/* scene.h - what stands in a room, as solids that can be put in order and painted
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A solid is convex, or near enough to be painted as one: a table top, a leg, the head of a light. It is bounded
 * by an upright prism, which orders it among the others, and painted by its faces, each in one tone. A person is
 * three such solids, painted by figure.h.
 */

#pragma once

#include "light_levels.h"
#include "study.h"
#include "tone.h"

/* A thing's own frame in the room: x ahead, y to its left, z up */
typedef struct
{
  LrVec3 origin_m, x, y, z;
} LrAxes;

typedef struct
{
  double x0, x1, y0, y1, z0, z1; /* metres in a frame */
} LrBox;

typedef struct
{
  LrHue  hue;
  double reflectance;
} LrMaterial;

typedef enum
{
  LR_FACE_PLAIN   = 0,
  LR_FACE_DETAIL  = 1 << 0, /* lies on another face: painted after those, in the order in which it was added */
  LR_FACE_TWO_SIDED = 1 << 1,
  LR_FACE_WALL    = 1 << 2, /* the light on it may differ from place to place */
} LrFaceFlags;

/* A convex polygon, anticlockwise as seen from outside; two points are a bar of some radius */
typedef struct
{
  guint       first, n;  /* of the scene's points */
  guint       flags;
  LrVec3      normal;
  LrColor     color;
  double      alpha;
  double      radius_m;  /* of a bar; else 0 */
  const LrWallLight *light; /* of LR_FACE_WALL: what falls on it; NULL: the same everywhere */
} LrFace;

typedef enum { LR_SOLID_FACES, LR_SOLID_WALL, LR_SOLID_FIGURE } LrSolidType;

typedef struct
{
  LrSolidType type;
  LrOutline   base;           /* on the floor */
  double      bottom_m, top_m;
  guint       first_face, n_faces;
  int         part;           /* of a figure: LrFigurePart */
  const LrPlaced *placed;     /* whose it is; NULL for walls */
} LrSolid;

/* The light by which people are modelled */
typedef struct
{
  double   gain;          /* of all of it: 1 brings out a surface turned to the key as light as it is */
  LrVec3   key;           /* unit, from the subject to the key light */
  double   wrap;          /* how far it reaches round the edge: the cosine of where it ends, turned away > 0 */
  double   key_share;     /* of the light on a face turned to it */
  double   ambient_share; /* of the light from all round */
  double   back_share;    /* of the light on a face turned to the back light; 0: there is none */
  LrVec3   back;
} LrModelling;

/* The light of the whole picture */
typedef struct
{
  const LrLightLevels *levels; /* (nullable): NULL: drawn as if it were lit well */
  double   per_lx;        /* what a white surface comes out as at 1 lx: relative luminance, 1 the picture's white */
  double   gain;          /* of what stands about, over the room as it is drawn when it is lit well */
} LrPictureLight;

typedef struct
{
  const LrStudy   *study;
  const LrPlaced  *camera;  /* looks, and is not seen */
  LrVec3           eye_m;
  LrProjection     projection; /* what is not in it need not be added */
  GArray          *points;  /* LrVec3 */
  GArray          *faces;   /* LrFace */
  GArray          *solids;  /* LrSolid */
  LrModelling      modelling;
  LrPictureLight   light;
  const LrThingLight *here;    /* (nullable): on the thing that is being added: else its light is the picture's */
} LrScene;

/* @levels: (nullable): of light in the plan */
LrScene *lr_scene_new  (const LrStudy *study, const LrCameraReading *camera, const LrLightLevels *levels);
void     lr_scene_free (LrScene *scene);

LrAxes lr_axes_standing (LrVec2 at_m, double z_m, double facing_rad);
LrAxes lr_axes_tilted   (LrVec3 at_m, double facing_rad, double tilt_rad);
LrVec3 lr_axes_point    (const LrAxes *axes, double x, double y, double z);
LrVec3 lr_axes_direction (const LrAxes *axes, double x, double y, double z);

/* Everything added between begin and end is one solid; end measures its prism, turned by @facing_rad */
void lr_scene_begin  (LrScene *scene, const LrPlaced *placed);
void lr_scene_end    (LrScene *scene, double facing_rad);
void lr_scene_face   (LrScene *scene, const LrVec3 *points_m, guint n, LrColor color, double alpha, guint flags);
void lr_scene_bar    (LrScene *scene, LrVec3 from_m, LrVec3 to_m, double radius_m, LrColor color);
void lr_scene_faces_of_box (LrScene *scene, const LrAxes *axes, LrBox box, gboolean has_ends, LrMaterial material);
/* A rectangle on the plane x = @x of a frame that looks along +x */
void lr_scene_front  (LrScene *scene, const LrAxes *axes, double x, LrBox box, LrColor color, guint flags);
/* A box, as a solid of its own */
void lr_scene_box    (LrScene *scene, const LrPlaced *placed, const LrAxes *axes, LrBox box, LrMaterial material);
/* The same without top and bottom, which something covers */
void lr_scene_column (LrScene *scene, const LrPlaced *placed, const LrAxes *axes, LrBox box, LrMaterial material);
/* How many pixels high the thing is in a picture of the usual width; 0: it is not in it */
double  lr_scene_size_px (const LrScene *scene, const LrPlaced *placed);
/* The tone of a surface in the room's light */
LrColor lr_scene_tone (const LrScene *scene, LrMaterial material, LrVec3 normal);

void lr_scene_add_walls     (LrScene *scene);                          /* scene_room.c */
void lr_scene_add_furniture (LrScene *scene, const LrPlaced *placed);  /* scene_furniture.c */
void lr_scene_add_chair     (LrScene *scene, const LrPlaced *placed, const LrAxes *axes, LrBox box, double seat_m,
                             LrMaterial material);
void lr_scene_add_kit       (LrScene *scene,
                             const LrPlaced *placed);  /* scene_kit.c: cameras, lights, microphones, panels */
void lr_scene_add_stand     (LrScene *scene, const LrPlaced *placed, double radius_m, double top_m,
                             double first_leg_rad);

#define LR_EQUIPMENT ((LrMaterial) { LR_HUE_METAL, 0.06 })
