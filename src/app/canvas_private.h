/* canvas_private.h - what the files of the sheet share
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One file for each thing that the user does. canvas.c owns the widget; every other file keeps its own state in its own
 * struct here and is the only one that writes it.
 */

#pragma once

#include "canvas.h"
#include "floor.h"
#include "snapping.h"

/* What a press has hold of */
typedef enum
{
  LR_GRIP_NONE,
  LR_GRIP_PAPER,
  LR_GRIP_ITEM,
  LR_GRIP_TURN,
  LR_GRIP_SIZE,
  LR_GRIP_POINT,
  LR_GRIP_CORNER,
  LR_GRIP_WALL,
  LR_N_GRIPS
} LrGrip;

/* canvas_drag.c */
typedef struct
{
  LrGrip   grip;
  gboolean has_moved;
  char    *id;         /* of the item held */
  int      index;      /* knob, path point, corner or wall */
  LrVec2   press;      /* device */
  LrVec2   origin;     /* of the view at the press */
  LrVec2   offset_m;   /* from the pointer to the point held, at the press */
  LrSnap   snap;       /* why the thing is where it is: its guides are drawn */
  guint    click_id;   /* a double click that waits for the release to be over */
  char    *refusal;    /* why the last place was refused; said when it is let go there */
} LrCanvasDrag;

/* canvas_layers.c: what the layer was painted from */
typedef struct
{
  LrView   view;
  int      scale_factor;
  LrPlan  *plan;
  char    *skip, *in_hand;
  LrLightLevels *levels; /* held: another one must not come to lie where it was */
  guint    fixes;      /* which things have a Fix; of no weight in a drag */
} LrCanvasLayerKey;

typedef struct
{
  GskRenderNode    *node;     /* paints the image of everything but the active item; NULL: to be painted */
  cairo_surface_t  *image;    /* goes after the node: cairo copies a surface that goes while a node paints it */
  LrCanvasLayerKey  key;
  GskRenderNode    *fixes_node; /* in a drag: the Fix marks of what stands still; NULL: none, or to be drawn */
  guint             fixes;      /* which those are */
  double            paint_ms; /* what the last painting took */
  guint             settle_id;/* paints it afresh when the gesture has ended */
  gboolean          is_moving;/* a pan or a zoom is under way */
} LrCanvasLayers;

/* canvas_trace.c: the picture of a floor plan under the room */
typedef struct
{
  LrPictureFile *of;      /* whose looks are known, or are being found out; NULL: there is none */
  int            page;
  LrUnderlay    *picture; /* what it looks like; NULL: not known */
  GCancellable  *loading, *importing; /* NULL: nothing is under way */
  GtkFileChooserNative *chooser;      /* while it is open */
  GtkWidget     *popover; /* trace_scale.c: asks for the length */
} LrCanvasTrace;

/* A mode that takes clicks and keys before the sheet does */
typedef struct
{
  void     (*leave) (LrCanvas *self);
  void     (*hover) (LrCanvas *self, LrVec2 at, GdkModifierType state);
  void     (*click) (LrCanvas *self, LrVec2 at, GdkModifierType state);
  gboolean (*key)   (LrCanvas *self, guint keyval, GdkModifierType state);
  void     (*draw)  (LrCanvas *self, cairo_t *cr);
  void     (*drag)  (LrCanvas *self, LrVec2 from, LrVec2 to, gboolean is_over); /* NULL: a drag moves the paper */
  gboolean needs_picture; /* it is left when there is none under the room */
} LrCanvasTool;

struct _LrCanvas
{
  GtkWidget           parent_instance;

  LrDocument         *document;
  GSignalGroup       *document_signals;
  LrView              view;
  gboolean            fits;       /* the whole room is kept in sight until the hand zooms or pans */
  LrPlan             *seen;       /* the plan that was shown last */
  LrVec2              pointer;    /* where it was last */
  gboolean            has_pointer;
  double              zoom_start; /* scale at the start of a pinch */

  LrCanvasLayers      layers;
  LrCanvasDrag        drag;
  LrCanvasTrace       trace;
  gboolean            has_room_in_hand; /* its corners show knobs and can be dragged */
  int                 wall_in_hand;     /* or -1 */

  const LrCanvasTool *tool;
  gpointer            tool_data;
  char               *dropping;   /* id of the thing that a drop shows */

  GPtrArray          *children;   /* of LrCanvasItem, in the order of Tab */
  GtkWidget          *hint;
  GtkWidget          *ways_in;
  GtkWidget          *menu;
  GtkWidget          *length_popover;
  LrPlan             *held_from, *held_to; /* in which the framing of a camera is held, and with it moved; NULL: none */
  char               *held_camera;
  double              held_m;     /* the field at its subject's eyes; NAN: none */
  LrPlan             *carried_from; /* which shows the set-up that was copied from; NULL: nothing was */
  GPtrArray          *carried;    /* ids in it */
  char               *hold_note;  /* what the lens could not hold at the place last tried; NULL: nothing */
};

/* canvas.c */
const LrTheme *lr_canvas_get_theme      (LrCanvas *self);
const char    *lr_canvas_get_active     (LrCanvas *self); /* id of the item that moves; (nullable) */
const LrRoom  *lr_canvas_get_room       (LrCanvas *self); /* (nullable) */
LrVec2         lr_canvas_to_room        (LrCanvas *self, LrVec2 at);
void           lr_canvas_update_ways_in (LrCanvas *self);

/* canvas_tools.c */
void           lr_canvas_set_hint       (LrCanvas *self, const char *hint); /* NULL: none */
void           lr_canvas_set_tool       (LrCanvas *self, const LrCanvasTool *tool, gpointer data);
gboolean       lr_canvas_may_edit       (LrCanvas *self); /* says why not */
/* Commits the plan that an edit returned, or says its error; takes both */
gboolean       lr_canvas_commit         (LrCanvas *self, LrPlan *next, GError *error, const char *what, const char *merge_key);
char          *lr_canvas_title_of       (LrCanvas *self, const char *format, const char *id); /* "Move camera B" */

/* canvas_layers.c */
void           lr_canvas_layers_snapshot   (LrCanvas *self, GtkSnapshot *snapshot);
void           lr_canvas_layers_invalidate (LrCanvas *self);
void           lr_canvas_layers_moving     (LrCanvas *self); /* a pan or zoom step was made */
void           lr_canvas_layers_clear      (LrCanvas *self);

/* canvas_marks.c: what the sheet draws over the plan */
void           lr_canvas_draw_marks     (LrCanvas *self, cairo_t *cr);
gboolean       lr_canvas_has_marks      (LrCanvas *self);
void           lr_canvas_draw_knob      (LrCanvas *self, cairo_t *cr, LrVec2 at_m);
/* A length along the way from a to b, above it and readable from below or the right */
void           lr_canvas_draw_length    (LrCanvas *self, cairo_t *cr, LrVec2 a_m, LrVec2 b_m);

/* canvas_zoom.c */
void           lr_canvas_zoom_init      (LrCanvas *self);
void           lr_canvas_zoom_install   (GtkWidgetClass *klass);
void           lr_canvas_place_room     (LrCanvas *self); /* fits, or keeps the middle, after a change of size or plan */
void           lr_canvas_clamp_scale    (LrCanvas *self);
void           lr_canvas_show_place     (LrCanvas *self, LrVec2 at_m);

/* canvas_drag.c */
void           lr_canvas_drag_init      (LrCanvas *self);
void           lr_canvas_drag_clear     (LrCanvas *self);
/* canvas_grips.c: the next plan while something is held */
LrVec2         lr_canvas_grip_point_m   (LrCanvas *self, LrVec2 at);
LrPlan        *lr_canvas_grip_next      (LrCanvas *self, LrVec2 at, GdkModifierType state, GError **error);
char          *lr_canvas_grip_title     (LrCanvas *self);
LrPlan        *lr_canvas_turned         (LrCanvas *self, const char *id, double facing_rad, GError **error);
LrSnapPull     lr_canvas_pull           (LrCanvas *self, GdkModifierType state);
LrVec2         lr_canvas_snap_item      (LrCanvas *self, const LrPlaced *placed, LrVec2 to_m, GdkModifierType state, LrSnap *snap);

/* canvas_keys.c */
void           lr_canvas_keys_init      (LrCanvas *self);
void           lr_canvas_let_go         (LrCanvas *self);

/* canvas_edits.c, canvas_menu.c */
void           lr_canvas_edits_install  (GtkWidgetClass *klass);
void           lr_canvas_nudge          (LrCanvas *self, LrVec2 by_m);
void           lr_canvas_turn_by        (LrCanvas *self, double by_rad);
void           lr_canvas_delete         (LrCanvas *self);
/* canvas_hold.c: @next with the framing held of a camera that was moved, if that is on; takes @next, which may be NULL */
LrPlan        *lr_canvas_hold_framing   (LrCanvas *self, LrPlan *next, const char *id);
void           lr_canvas_forget_held    (LrCanvas *self);
void           lr_canvas_hold_end       (LrCanvas *self); /* the move is over: what could not be held is said */
void           lr_canvas_duplicate      (LrCanvas *self);
void           lr_canvas_menu_init      (LrCanvas *self);
void           lr_canvas_popup_menu     (LrCanvas *self, LrVec2 at, const char *id); /* @id: NULL for the paper */

/* canvas_carry.c */
void           lr_canvas_carry_install  (GtkWidgetClass *klass);
void           lr_canvas_carry_clear    (LrCanvas *self);
void           lr_canvas_copy           (LrCanvas *self);
void           lr_canvas_paste          (LrCanvas *self);
gboolean       lr_canvas_can_paste      (LrCanvas *self);

/* canvas_walls.c: the room's walls and corners in hand */
void           lr_canvas_walls_install  (GtkWidgetClass *klass);
int            lr_canvas_wall_at        (LrCanvas *self, LrVec2 at); /* the wall or its dimension there, -1 for none */
void           lr_canvas_take_wall      (LrCanvas *self, int wall);  /* -1: lets the room go */
void           lr_canvas_ask_length     (LrCanvas *self, int wall);

/* canvas_trace.c */
void           lr_canvas_trace_install  (GtkWidgetClass *klass);
void           lr_canvas_trace_sync     (LrCanvas *self); /* the plan is another */
void           lr_canvas_trace_clear    (LrCanvas *self);
gboolean       lr_canvas_trace_lies     (LrCanvas *self, LrSimilarity *lies); /* FALSE: there is no picture to be seen */
gboolean       lr_canvas_trace_fit      (LrCanvas *self);

/* canvas_drop.c */
void           lr_canvas_drop_init      (LrCanvas *self);

/* canvas_children.c */
void           lr_canvas_children_init     (LrCanvas *self);
void           lr_canvas_children_sync     (LrCanvas *self); /* the plan is another */
void           lr_canvas_children_select   (LrCanvas *self); /* what is in hand is another */
void           lr_canvas_children_allocate (LrCanvas *self);
void           lr_canvas_children_clear    (LrCanvas *self);
gboolean       lr_canvas_children_focus    (LrCanvas *self, GtkDirectionType direction);
void           lr_canvas_children_grab     (LrCanvas *self); /* keyboard focus to what is in hand */
void           lr_canvas_step              (LrCanvas *self, int by);
