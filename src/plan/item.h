/* item.h - a thing in a set-up: people, cameras, lights, furniture, doors, sockets, ...
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Immutable once it is in a plan, and shared between plans. Fields may be read; only plan_edit and the reader write
 * them, on a fresh copy.
 */

#pragma once

#include <json-glib/json-glib.h>

#include "lamp_file.h"
#include "prop.h"
#include "vec.h"

typedef enum
{
  LR_ITEM_PERSON,
  LR_ITEM_CAMERA,
  LR_ITEM_LIGHT,
  LR_ITEM_MICROPHONE,
  LR_ITEM_PANEL,
  LR_ITEM_LEAD,
  LR_ITEM_FURNITURE,
  LR_ITEM_DOOR,
  LR_ITEM_WINDOW,
  LR_ITEM_SOCKET,
  LR_ITEM_CIRCUIT,
  LR_ITEM_NOISE,
  LR_ITEM_HOUSE_LIGHT,
  LR_ITEM_LENS, /* in the kit only; mounted by a camera's lens */
  LR_N_ITEM_KINDS
} LrItemKind;

/* How an item's place is given */
typedef enum
{
  LR_PLACE_FLOOR, /* at_m and facing_rad */
  LR_PLACE_WALL,  /* wall and along_m */
  LR_PLACE_PATH,  /* path: a lead */
  LR_PLACE_NONE,  /* a lens in the kit, a circuit */
} LrPlaceType;

typedef enum { LR_ROLE_SUBJECT, LR_ROLE_INTERVIEWER, LR_ROLE_OTHER } LrRole;
typedef enum { LR_POSTURE_SEATED, LR_POSTURE_STANDING } LrPosture;
typedef enum { LR_LIGHT_WIDE, LR_LIGHT_PANEL, LR_LIGHT_POINT } LrLightForm;
typedef enum { LR_SHAPE_RECTANGLE, LR_SHAPE_ROUND } LrLightShape;
typedef enum { LR_JOB_KEY, LR_JOB_FILL, LR_JOB_BACK, LR_JOB_WALL, LR_JOB_OTHER } LrLightJob;
typedef enum { LR_MIC_BOOM, LR_MIC_LAVALIER, LR_MIC_STAND, LR_MIC_CAMERA } LrMicForm;
typedef enum { LR_COVER_USUAL, LR_COVER_HARD, LR_COVER_SOFT } LrCover; /* usual: as things of its form mostly are */
typedef enum { LR_PANEL_REFLECTOR, LR_PANEL_FLAG, LR_PANEL_BACKDROP } LrPanelForm;
typedef enum
{
  LR_FURNITURE_TABLE, LR_FURNITURE_CHAIR, LR_FURNITURE_SOFA, LR_FURNITURE_CABINET, LR_FURNITURE_CHEST,
  LR_FURNITURE_RADIATOR, LR_FURNITURE_BOX, LR_FURNITURE_CYLINDER
} LrFurnitureForm;
typedef enum { LR_BLIND_NONE, LR_BLIND_UP, LR_BLIND_HALF, LR_BLIND_DOWN } LrBlind;
typedef enum { LR_ASPECT_SENSOR, LR_ASPECT_16_9, LR_ASPECT_9_16, LR_ASPECT_1_1, LR_ASPECT_4_5, LR_ASPECT_239 } LrAspect;
typedef enum { LR_HINGE_START, LR_HINGE_END } LrHinge; /* the opening's end nearer to the wall's first corner, or the other */
typedef enum { LR_SWING_IN, LR_SWING_OUT, LR_SWING_NONE } LrSwing;
/* What a thing goes with when the room is found otherwise than planned, or the set moves as one; usual: as things of its kind mostly do */
typedef enum { LR_GOES_USUAL, LR_GOES_SET, LR_GOES_WALL, LR_GOES_ROOM } LrGoes;

typedef struct
{
  int      role;        /* LrRole */
  int      posture;     /* LrPosture */
  double   stature_m;
  double   seat_height_m;
  double   eye_height_m; /* measured; 0: from the stature */
  char    *looks_at;    /* id of a person; facing_rad counts when it is "" */
  gboolean has_glasses;
  double   skin_reflectance;
  double   clothing_reflectance;
  char    *clothing;
  gboolean uses_wheelchair;
} LrPerson;

typedef struct
{
  double sensor_width_m, sensor_height_m;
  double sensor_crop;     /* the mode records 1 / crop of the sensor's width and height; 1: all of it */
  double squeeze;
  int    aspect;          /* LrAspect: delivery, cut from the recorded frame */
  char  *lens;            /* id of a kit entry */
  double focal_m;         /* as marked on the ring: a converter behind the lens lengthens it */
  double f_number;        /* as marked */
  double coc_m;           /* limit of the blur disc; 0: diagonal of the recorded part / 1500 */
  double focus_m;         /* from the sensor plane; 0: on the eyes of whom it aims at */
  double frame_rate_fps;
  double shutter_s;
  double iso;
  double native_iso, second_native_iso; /* at which it has least noise; 0: not known, no second one */
  double nd_stops;
  double white_balance_k;
  double lens_height_m;
  char  *aims_at;         /* id of an item; "": facing_rad and tilt_rad count */
  double across, down;    /* where in the frame the aim sits, 0..1 from the upper left */
  double tilt_rad;        /* > 0 up; when it aims at nothing */
  double stand_radius_m;
  double draw_w;          /* watts it takes */
  double battery_wh;      /* of one battery, as marked; 0: not told */
  double data_rate_mbit_s; /* of what it records, all of it; 0: not told */
  double card_gb;         /* what one card holds, 10^9 bytes; 0: not told */
} LrCamera;

typedef struct
{
  int    form;           /* LrLightForm */
  int    job;            /* LrLightJob */
  int    shape;          /* LrLightShape: of what emits; round: width_m across */
  double width_m, height_m; /* of what emits, with what sits in front of it */
  double power_w;        /* taken from the socket at full */
  double output_lm;      /* without a modifier, like the three that follow; what is given of them counts in their order */
  double output_lx, output_at_m; /* measured on the axis, so far from what emits */
  double output_cd;      /* on the axis */
  double beam_rad;       /* full angle at half intensity */
  double field_rad;      /* at a tenth; 0: not known */
  char  *photometric_file;
  double color_temperature_k;
  double color_temperature_min_k, color_temperature_max_k; /* between which it can be set; 0: it cannot */
  double lamp_height_m;
  char  *aims_at;        /* id of an item; "": facing_rad and tilt_rad count */
  double aim_height_m;   /* height at which the axis meets the aim; 0: the eyes of a person, the middle of a thing */
  double tilt_rad;
  double dim;            /* 0..1 */
  double stand_radius_m;
  double mass_kg;
  char  *modifier;
  double modifier_pass;     /* share of the light that it lets through; 0: all */
  double modifier_beam_rad; /* that leaves it: wider, it spreads what passes; narrower, it cuts; 0: the lamp's own */
  double power_factor;   /* 0: not told */
  double stand_mass_kg;  /* 0: not weighed */
  double bag_kg;         /* hung on the stand, at the post */
  double battery_wh;     /* of the battery that it can run from, as marked; 0: it runs from the mains */
} LrLight;

typedef struct
{
  int    form;           /* LrMicForm */
  double omni_share;     /* pattern: share + (1 - share) cos: 1 omni, .5 cardioid, .3 narrow */
  double tube_m;         /* acoustic length of an interference tube before the capsule; 0: none */
  double tip_x_m, tip_y_m; /* the capsule over the floor (boom, stand) */
  double tip_height_m;
  char  *aims_at;        /* id of a person: at the mouth; "": straight down */
  char  *worn_by;        /* lavalier: id of a person */
  char  *mounted_on;     /* on camera: id of a camera, which it points with */
  double stand_radius_m;
  double arm_mass_kg, capsule_mass_kg;
  double short_end_m;    /* of the arm, behind the post */
  double stand_mass_kg;  /* 0: not weighed */
  double counterweight_kg; /* at the end of the short end */
  double bag_kg;         /* hung on the stand, at the post */
} LrMicrophone;

typedef struct
{
  int    form;           /* LrPanelForm */
  double width_m, height_m;
  double bottom_m;       /* its lower edge above the floor */
  double reflectance;
  double stand_radius_m;
  double mass_kg, stand_mass_kg; /* 0: not weighed */
  double bag_kg;         /* hung on the stand, at the post */
} LrPanel;

typedef struct
{
  double length_m;       /* as bought */
  char  *socket;         /* id */
  char  *feeds;          /* id of an item */
  double core_mm2;
  gboolean is_wound;     /* on a reel, and not all of it off */
  double wound_limit_w;  /* what it bears wound up, as marked; 0: not marked */
} LrLead;

typedef struct
{
  int      form;         /* LrFurnitureForm */
  double   length_m;     /* along its own x, front to back: a chest's drawers, a chair's sitter face +x */
  double   width_m;      /* along its own y, side to side */
  double   height_m;     /* its top above the floor */
  double   bottom_m;     /* its lowest part above the floor: a shelf, a picture; legs do not count */
  gboolean is_fixed;
  double   reflectance;
  int      cover;        /* LrCover */
} LrFurniture;

typedef struct
{
  double   width_m, height_m;
  int      hinge, swing; /* LrHinge, LrSwing */
  gboolean is_exit;
} LrDoor;

typedef struct
{
  double width_m, sill_m, head_m;
  int    blind;          /* LrBlind */
} LrWindow;

typedef struct
{
  double height_m;
  char  *circuit;        /* id of a circuit */
  int    outlets;
} LrSocket;

typedef struct
{
  double volts_v, amps_a;
  double known_load_w;   /* what else hangs on it; 0: not known */
} LrCircuit;

typedef struct
{
  double   level_db;     /* at 1 m */
  double   height_m;
  double   length_m, width_m; /* the thing's outline; 0: none drawn */
  gboolean can_switch_off;
  gboolean is_off;
  char    *when;
} LrNoise;

typedef struct
{
  double   height_m;
  gboolean is_on, can_switch_off, may_flicker;
  double   output_lm, color_temperature_k;
} LrHouseLight;

typedef struct
{
  double focal_min_m, focal_max_m;
  double f_number_min, f_number_max; /* min: widest */
  double nearest_focus_m;            /* from the sensor plane */
  double converter;                  /* factor of the optic between lens and body; 1: none */
} LrLens;

typedef struct
{
  LrItemKind kind;
  char      *id;         /* stable, unique in the set-up or the kit */
  char      *name;       /* "Wenna", "drafting table" */
  char      *tag;        /* "A", "L1", "M2", "S3"; "" for none */
  char      *kit;        /* id of the kit entry it was taken from, "" */
  char      *note;
  LrVec2     at_m;
  double     facing_rad;
  int        goes_with;  /* LrGoes: on the floor */
  int        wall;       /* index of the wall: from corner wall to the next */
  double     along_m;    /* from that corner to the thing's near edge (doors, windows) or middle */
  LrVec2    *path_m;     /* leads */
  gsize      n_path;
  LrLampFile *lamp_file; /* lights: measured intensities, which count in place of output and beam; may be NULL */
  JsonObject *unknown;   /* members that this version does not know, kept for the writer; may be NULL */
  union
  {
    LrPerson     person;
    LrCamera     camera;
    LrLight      light;
    LrMicrophone microphone;
    LrPanel      panel;
    LrLead       lead;
    LrFurniture  furniture;
    LrDoor       door;
    LrWindow     window;
    LrSocket     socket;
    LrCircuit    circuit;
    LrNoise      noise;
    LrHouseLight house_light;
    LrLens       lens;
  };
} LrItem;

typedef struct
{
  const char *word;      /* in ids and in the file: "camera" */
  const char *list_key;  /* its array in the file: "cameras" */
  const char *title;     /* for people, to be translated: "Camera" */
  const char *tag_stem;  /* "L" for L1, L2, ...; "A" for A, B, C; NULL: no tag */
  gboolean    is_of_room;/* stands in the file's room, not beside it */
  LrPlaceType place;
  LrPropTable table;     /* the members of its own part; the common ones are in lr_item_common_table (). All offsets are into LrItem */
} LrItemKindInfo;

/* A boom or on a stand: it stands by itself, and its capsule is where its tip is. Others go with who wears or what carries them */
static inline gboolean
lr_microphone_stands (const LrMicrophone *microphone)
{
  return microphone->form == LR_MIC_BOOM || microphone->form == LR_MIC_STAND;
}

/* Id of the person that wears a microphone or of the camera that carries it; "" for none */
static inline const char *
lr_item_carrier (const LrItem *item)
{
  if (item->kind != LR_ITEM_MICROPHONE)
    return "";
  return item->microphone.worn_by[0] != '\0' ? item->microphone.worn_by : item->microphone.mounted_on;
}

const LrItemKindInfo *lr_item_kind_info    (LrItemKind kind);
const LrPropTable    *lr_item_common_table (LrPlaceType place); /* id, name, tag, kit, note, and the place's members */
/* Kinds in the order of a set-up's items and of the file's lists; @index < LR_N_ITEM_KINDS */
LrItemKind            lr_item_kind_in_order (guint index);
/* The row of @key for this kind, common or own; NULL if it has none */
const LrProp         *lr_item_find_prop    (LrItemKind kind, const char *key);

LrItem  *lr_item_new   (LrItemKind kind, const char *id); /* with every fallback */
/* The same in its usual size for a role (person) or form (light, microphone, panel, furniture); other kinds ignore @form */
LrItem  *lr_item_new_usual (LrItemKind kind, int form, const char *id);
LrItem  *lr_item_copy  (const LrItem *item);              /* a fresh one that may be written */
LrItem  *lr_item_ref   (const LrItem *item);
void     lr_item_unref (LrItem *item);
gboolean lr_item_equal (const LrItem *a, const LrItem *b);
/* Full angle at half the intensity of a light, in the level plane: past its modifier, by its file, else as given [rad] */
double      lr_item_beam_rad   (const LrItem *light);
double      lr_item_bare_beam_rad (const LrItem *light); /* before a modifier */
const char *lr_item_tag_stem   (const LrItem *item); /* of its kind and form: reflector "R", flag "F"; (nullable) */
const char *lr_item_form_label (const LrItem *item); /* translated: "Chair", "Interviewer", or its kind's title */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LrItem, lr_item_unref)
