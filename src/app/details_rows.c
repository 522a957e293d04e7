/* details_rows.c - which properties of a kind of thing come first, and what a field of each offers
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "details_rows.h"

#include "packing.h"
#include "power_readings.h"
#include "prop_text.h"

#include <glib/gi18n-lib.h>

#define FACE "facing-deg"
#define LAMP_ROW "photometric-file" /* it has a row of its own */

static const char *const person_keys[] = {
  "name", "role", "posture", "stature-mm", "x-mm", "y-mm", "=looks-at", "eye-height-mm", "seat-height-mm", "has-glasses", "uses-wheelchair", NULL
};
static const char *const camera_keys[] = {
  "lens", "f-number", "lens-height-mm", "focus-mm", "x-mm", "y-mm", "=aims-at", "shutter-s", "iso", "frame-rate-fps",
  "white-balance-k", NULL
};
static const char *const light_keys[] = {
  "job", "dim-pct", "lamp-height-mm", "color-temperature-k", "x-mm", "y-mm", "=aims-at", "beam-deg", "power-w", "=modifier", NULL
};
static const char *const boom_keys[] = {
  "tip-height-mm", "omni-share-pct", "tip-x-mm", "tip-y-mm", "x-mm", "y-mm", "=aims-at", NULL
};
static const char *const lavalier_keys[] = { "=worn-by", "omni-share-pct", NULL };
static const char *const camera_microphone_keys[] = { "=mounted-on", "omni-share-pct", "tube-mm", NULL };
static const char *const panel_keys[] = {
  "width-mm", "height-mm", "bottom-mm", FACE, "x-mm", "y-mm", "reflectance-pct", NULL
};
static const char *const lead_keys[] = { "=socket", "=feeds", "length-mm", "core-mm2", NULL };
static const char *const furniture_keys[] = {
  "=name", "width-mm", "length-mm", "height-mm", FACE, "x-mm", "y-mm", "is-fixed", NULL
};
static const char *const door_keys[] = { "=name", "width-mm", "along-mm", "hinge", "swing", "is-exit", NULL };
static const char *const window_keys[] = { "=name", "width-mm", "along-mm", "sill-mm", "head-mm", "=blind", NULL };
static const char *const socket_keys[] = { "=circuit", "outlets", "height-mm", "along-mm", NULL };
static const char *const circuit_keys[] = { "=name", "volts-v", "amps-a", "known-load-w", NULL };
static const char *const noise_keys[] = {
  "=name", "level-db", "height-mm", "x-mm", "y-mm", "can-switch-off", "is-off", "=when", NULL
};
static const char *const house_light_keys[] = {
  "=name", "x-mm", "y-mm", "height-mm", "color-temperature-k", "is-on", "can-switch-off", "may-flicker", NULL
};
static const char *const no_keys[] = { NULL };

static const char *const *const keys_by_kind[LR_N_ITEM_KINDS] = {
  [LR_ITEM_PERSON] = person_keys, [LR_ITEM_CAMERA] = camera_keys, [LR_ITEM_LIGHT] = light_keys,
  [LR_ITEM_MICROPHONE] = boom_keys, [LR_ITEM_PANEL] = panel_keys, [LR_ITEM_LEAD] = lead_keys,
  [LR_ITEM_FURNITURE] = furniture_keys, [LR_ITEM_DOOR] = door_keys, [LR_ITEM_WINDOW] = window_keys,
  [LR_ITEM_SOCKET] = socket_keys, [LR_ITEM_CIRCUIT] = circuit_keys, [LR_ITEM_NOISE] = noise_keys,
  [LR_ITEM_HOUSE_LIGHT] = house_light_keys, [LR_ITEM_LENS] = no_keys,
};

/* Full stops and thirds that lenses have marked, mains-safe shutters for 50 and 60 Hz, and so on */
static const double stops[] = { 1.4, 1.8, 2.0, 2.8, 4.0, 5.6, 8.0, 11.0, 16.0 };
static const double shutters[] = { 1.0 / 24, 1.0 / 25, 1.0 / 30, 1.0 / 48, 1.0 / 50, 1.0 / 60, 1.0 / 100, 1.0 / 120, 1.0 / 125, 1.0 / 250 };
static const double isos[] = { 100, 200, 400, 640, 800, 1250, 1600, 3200, 6400, 12800 };
static const double frame_rates[] = { 23.976, 24, 25, 29.97, 30, 48, 50, 59.94, 60 };
static const double whites[] = { 2700, 3000, 3200, 4000, 4300, 5000, 5600, 6500 };
static const double nds[] = { 0.0, 1, 2, 3, 4, 6, 8, 10 };
static const double volts[] = { 100, 120, 230 };
static const double mains[] = { 50, 60 };
static const double amps[] = { 10, 13, 15, 16, 20, 32 };

static const struct { const char *key; const double *values; gsize n; } presets[] = {
  { "f-number", stops, G_N_ELEMENTS (stops) },
  { "shutter-s", shutters, G_N_ELEMENTS (shutters) },
  { "iso", isos, G_N_ELEMENTS (isos) },
  { "frame-rate-fps", frame_rates, G_N_ELEMENTS (frame_rates) },
  { "white-balance-k", whites, G_N_ELEMENTS (whites) },
  { "color-temperature-k", whites, G_N_ELEMENTS (whites) },
  { "native-iso", isos, G_N_ELEMENTS (isos) },
  { "second-native-iso", isos, G_N_ELEMENTS (isos) },
  { "color-temperature-min-k", whites, G_N_ELEMENTS (whites) },
  { "color-temperature-max-k", whites, G_N_ELEMENTS (whites) },
  { "mains-hz", mains, G_N_ELEMENTS (mains) },
  { "nd-stops", nds, G_N_ELEMENTS (nds) },
  { "volts-v", volts, G_N_ELEMENTS (volts) },
  { "amps-a", amps, G_N_ELEMENTS (amps) },
};

/**
 * lr_details_keys:
 * @item: what is in hand
 *
 * Returns: (transfer none): keys of its first properties
 */
const char *const *
lr_details_keys (const LrItem *item)
{
  if (item->kind == LR_ITEM_MICROPHONE && item->microphone.form == LR_MIC_LAVALIER)
    return lavalier_keys;
  if (item->kind == LR_ITEM_MICROPHONE && item->microphone.form == LR_MIC_CAMERA)
    return camera_microphone_keys;

  return keys_by_kind[item->kind];
}

static gboolean
has_key (const char *const *keys,
         const char        *key)
{
  for (; *keys != NULL; keys++)
    if (g_str_equal (*keys + ((*keys)[0] == '=' ? 1 : 0), key))
      return TRUE;
  return FALSE;
}

static void
add_others (GPtrArray         *others,
            const LrPropTable *table,
            const char *const *keys)
{
  for (gsize i = 0; i < table->n_props; i++)
    if (table->props[i].label != NULL && !has_key (keys, table->props[i].key) && !g_str_equal (table->props[i].key, LAMP_ROW))
      g_ptr_array_add (others, (gpointer) &table->props[i]);
}

/**
 * lr_details_other_props:
 * @item: what is in hand
 *
 * Returns: (transfer container) (element-type LrProp): its other properties, those of its kind first
 */
GPtrArray *
lr_details_other_props (const LrItem *item)
{
  const LrItemKindInfo *info = lr_item_kind_info (item->kind);
  const char *const *keys = lr_details_keys (item);
  GPtrArray *others = g_ptr_array_new ();

  add_others (others, &info->table, keys);
  add_others (others, lr_item_common_table (info->place), keys);
  return others;
}

/**
 * lr_details_label:
 * @item: what is in hand
 * @key: of one of its properties
 *
 * Returns: (transfer none) (nullable): a translated label instead of the property's own, or %NULL
 */
const char *
lr_details_label (const LrItem *item,
                  const char   *key)
{
  gboolean is_boom = item->kind == LR_ITEM_MICROPHONE;

  if (g_str_equal (key, "x-mm"))
    return is_boom ? _("Stand from west") : _("From west wall");
  if (g_str_equal (key, "y-mm"))
    return is_boom ? _("Stand from south") : _("From south wall");
  if (g_str_equal (key, "tip-x-mm"))
    return _("Tip from west");
  if (g_str_equal (key, "tip-y-mm"))
    return _("Tip from south");
  if (g_str_equal (key, "omni-share-pct"))
    return _("Omni share");
  return NULL;
}

/**
 * lr_details_presets:
 * @key: of a property
 * @values: (out): standard values, in inside units
 *
 * Returns: how many there are
 */
gsize
lr_details_presets (const char    *key,
                    const double **values)
{
  for (gsize i = 0; i < G_N_ELEMENTS (presets); i++)
    if (g_str_equal (presets[i].key, key))
      {
        *values = presets[i].values;
        return presets[i].n;
      }
  return 0;
}

static void
add_option (GPtrArray  *ids,
            GPtrArray  *titles,
            const char *id,
            char       *title)
{
  g_ptr_array_add (ids, g_strdup (id));
  g_ptr_array_add (titles, title);
}

static gboolean
may_name (const LrProp *prop,
          const LrItem *item,
          const LrItem *other)
{
  if (g_str_equal (other->id, item->id))
    return FALSE;
  if (g_str_equal (prop->key, "feeds"))
    return other->kind == LR_ITEM_LIGHT || other->kind == LR_ITEM_CAMERA;
  if (g_str_equal (prop->target, LR_TARGET_ITEM))
    return other->kind != LR_ITEM_LEAD && other->kind != LR_ITEM_CIRCUIT && other->kind != LR_ITEM_SOCKET;

  return g_str_equal (prop->target, lr_item_kind_info (other->kind)->word);
}

/* Cameras and lights meet a person's eyes */
static char *
option_title (const LrProp *prop,
              const LrItem *other)
{
  g_autofree char *title = lr_item_title (other);

  if (other->kind == LR_ITEM_PERSON && g_str_equal (prop->target, LR_TARGET_ITEM) && g_str_equal (prop->key, "aims-at"))
    /* Translators: where a camera aims: a person, at the eyes */
    return g_strdup_printf (_("%s, eyes"), title);

  return g_steal_pointer (&title);
}

/* "85 mm" or "24–70 mm"; (transfer full) */
static char *
focal_title (const LrLens *lens)
{
  const LrProp *prop = lr_item_find_prop (LR_ITEM_LENS, "focal-max-mm");
  g_autofree char *longest = lr_prop_text_format (prop, lens->focal_max_m, LR_UNITS_METRIC);

  if (lens->focal_min_m == lens->focal_max_m)
    return g_steal_pointer (&longest);

  return g_strdup_printf ("%.4g–%s", 1000.0 * lens->focal_min_m, longest);
}

/* Whose camera has the last one of it; NULL: there is one for @item */
static const LrItem *
find_user (const LrPlan     *plan,
           const LrItem     *item,
           const LrKitEntry *entry)
{
  const GPtrArray *items = lr_plan_get_setup (plan)->items;

  if (entry->item->kind != LR_ITEM_LENS || g_str_equal (item->camera.lens, entry->item->id) || lr_plan_kit_left (plan, entry) > 0)
    return NULL;

  for (guint i = 0; i < items->len; i++)
    {
      const LrItem *other = g_ptr_array_index (items, i);

      if (other != item && other->kind == LR_ITEM_CAMERA && g_str_equal (other->camera.lens, entry->item->id))
        return other;
    }
  return NULL;
}

/* "85 mm, on Camera B" */
static char *
say_user (const char   *title,
          const LrItem *user)
{
  g_autofree char *name = user != NULL ? lr_item_title (user) : NULL;

  /* Translators: a lens, and the camera that has it */
  return name != NULL ? g_strdup_printf (_("%s, on %s"), title, name) : g_strdup (title);
}

/* Lenses go by their focal lengths, those that share one by their titles in the kit */
static void
add_lenses (GPtrArray    *ids,
            GPtrArray    *titles,
            const LrPlan *plan,
            const LrItem *item)
{
  for (guint i = 0; i < plan->kit->len; i++)
    {
      const LrKitEntry *entry = g_ptr_array_index (plan->kit, i);
      const LrItem *other = find_user (plan, item, entry);
      g_autofree char *focal = entry->item->kind == LR_ITEM_LENS ? focal_title (&entry->item->lens) : NULL;

      if (focal == NULL)
        continue;

      if (g_ptr_array_find_with_equal_func (titles, focal, g_str_equal, NULL))
        add_option (ids, titles, entry->item->id, say_user (entry->title, other));
      else
        add_option (ids, titles, entry->item->id, say_user (focal, other));
    }
}

static void
add_items (GPtrArray     *ids,
           GPtrArray     *titles,
           const LrSetup *setup,
           const LrProp  *prop,
           const LrItem  *item,
           gboolean       wants_people)
{
  for (guint i = 0; i < setup->items->len; i++)
    {
      const LrItem *other = g_ptr_array_index (setup->items, i);

      if ((other->kind == LR_ITEM_PERSON) == wants_people && may_name (prop, item, other))
        add_option (ids, titles, other->id, option_title (prop, other));
    }
}

/* What it is called when it names nothing; of a circuit that is a thing to ask, for a socket has one */
static const char *
nothing_title (const LrProp *prop)
{
  if (g_str_equal (prop->target, "circuit"))
    return _("not known");

  return g_str_equal (prop->target, "person") ? _("nobody") : _("nothing");
}

/**
 * lr_details_set_options:
 * @field: of a reference
 *
 * Offers nothing, then people, then everything else in the set-up or in the kit that it may name, and a new circuit.
 */
void
lr_details_set_options (LrField      *field,
                        const LrPlan *plan,
                        const LrItem *item)
{
  const LrProp *prop = lr_field_get_prop (field);
  const LrSetup *setup = lr_plan_get_setup (plan);
  g_autoptr (GPtrArray) ids = g_ptr_array_new_with_free_func (g_free), titles = g_ptr_array_new_with_free_func (g_free);

  add_option (ids, titles, "", g_strdup (nothing_title (prop)));
  if (g_str_equal (prop->target, "lens"))
    add_lenses (ids, titles, plan, item);
  add_items (ids, titles, setup, prop, item, TRUE);
  add_items (ids, titles, setup, prop, item, FALSE);
  if (g_str_equal (prop->target, "circuit"))
    add_option (ids, titles, LR_DETAILS_NEW_CIRCUIT, g_strdup (_("a new circuit")));
  g_ptr_array_add (ids, NULL);
  g_ptr_array_add (titles, NULL);
  lr_field_set_options (field, (const char *const *) ids->pdata, (const char *const *) titles->pdata);
}

/**
 * lr_details_set_placeholder:
 * @field: of an optional number
 *
 * Says in the empty field what counts in its place.
 */
void
lr_details_set_placeholder (LrField       *field,
                            const LrStudy *study,
                            const LrItem  *item,
                            LrUnits        units)
{
  const char *key = lr_field_get_prop (field)->key;
  const LrCameraReading *camera = lr_study_find_camera (study, item->id);
  const LrPlaced *placed = lr_study_find_placed (study, item->id);
  g_autofree char *text = NULL;
  LrStandReading stand;

  if (g_str_equal (key, "focus-mm") && camera != NULL && camera->has_subject)
    text = lr_length_format (camera->focus_m, units);
  else if (g_str_equal (key, "eye-height-mm") && placed != NULL && item->kind == LR_ITEM_PERSON)
    text = lr_length_format (placed->eyes_m.z, units);
  else if (g_str_equal (key, "coc-mm") && camera != NULL)
    text = lr_prop_text_format (lr_field_get_prop (field), camera->coc_m, units);
  else if (g_str_equal (key, "power-factor"))
    text = g_strdup_printf ("%.1f", lr_study_power_factor (item));
  else if (g_str_equal (key, "stand-mass-kg") && placed != NULL && lr_study_stand (study, placed, &stand) && stand.usual_kg > 0.0)
    /* Translators: a mass that counts as long as none is typed */
    text = g_strdup_printf (_("taken as %.0f kg"), stand.usual_kg);
  else if (g_str_equal (key, "aim-height-mm"))
    text = g_strdup (_("the eyes"));
  else if (lr_pack_usual (item->kind, key) > 0.0)
    {
      double told = lr_pack_told (study, item, key);

      text = lr_prop_text_format (lr_field_get_prop (field), told > 0.0 ? told : lr_pack_usual (item->kind, key), units);
    }
  else
    text = g_strdup (_("not given"));
  lr_field_set_placeholder (field, text);
}

/**
 * lr_details_offset:
 * @prop: a property
 * @room: where the thing stands
 *
 * Returns: what its field calls 0, in inside units: the room's least x or y for places on the floor
 */
double
lr_details_offset (const LrProp *prop,
                   const LrRoom *room)
{
  gboolean is_x = g_str_equal (prop->key, "x-mm") || g_str_equal (prop->key, "tip-x-mm");
  gboolean is_y = g_str_equal (prop->key, "y-mm") || g_str_equal (prop->key, "tip-y-mm");
  double least = HUGE_VAL;

  if ((!is_x && !is_y) || room->n_corners == 0)
    return 0.0;

  for (gsize i = 0; i < room->n_corners; i++)
    least = fmin (least, is_x ? room->corners_m[i].x : room->corners_m[i].y);
  return least;
}

static const char *
get_target (const LrItem *item)
{
  switch ((int) item->kind)
    {
    case LR_ITEM_PERSON:
      return item->person.looks_at;
    case LR_ITEM_CAMERA:
      return item->camera.aims_at;
    case LR_ITEM_LIGHT:
      return item->light.aims_at;
    default:
      return "";
    }
}

/**
 * lr_details_is_by_file:
 * @prop: a property
 * @item: what is in hand
 *
 * Returns: whether it is the output or the beam of a light whose photometric file says them
 */
gboolean
lr_details_is_by_file (const LrProp *prop,
                       const LrItem *item)
{
  return item->lamp_file != NULL && (g_str_equal (prop->key, "output-lm") || g_str_equal (prop->key, "beam-deg"));
}

/**
 * lr_details_is_live:
 *
 * Returns: %FALSE for what is overridden: the facing and tilt of what looks or aims at something
 */
gboolean
lr_details_is_live (const LrProp *prop,
                    const LrItem *item)
{
  if (g_str_equal (prop->key, FACE) || g_str_equal (prop->key, "tilt-deg"))
    return get_target (item)[0] == '\0';
  if (g_str_equal (prop->key, "seat-height-mm"))
    return item->kind == LR_ITEM_PERSON && item->person.posture == LR_POSTURE_SEATED;
  if (g_str_equal (prop->key, "across-pct") || g_str_equal (prop->key, "down-pct") || g_str_equal (prop->key, "aim-height-mm"))
    return get_target (item)[0] != '\0';
  return TRUE;
}

/**
 * lr_details_offer_usual:
 * @field: of what is no item, or of an item whose fields do not depend on others
 *
 * Offers standard values; in an empty field, says what counts in its place.
 */
void
lr_details_offer_usual (LrField *field)
{
  const char *key = lr_field_get_prop (field)->key;
  const double *values;
  gsize n = lr_details_presets (key, &values);

  if (n > 0)
    lr_field_set_presets (field, values, n);
  if (g_str_equal (key, "mains-hz"))
    /* Translators: a frequency of the mains that nobody has told is guessed from the volts of the circuits */
    lr_field_set_placeholder (field, _("by the volts"));
  if (g_str_equal (key, "background-db") || g_str_equal (key, "reverberation-s"))
    /* Translators: a figure that was not measured, in a narrow field */
    lr_field_set_placeholder (field, _("unknown"));
  if (g_str_equal (key, "material"))
    /* Translators: as long as nobody says what a wall, floor or ceiling is of */
    lr_field_set_placeholder (field, _("not noted: taken as hard"));
  if (g_str_equal (key, "floor-note") || g_str_equal (key, "address") || g_str_equal (key, "access") || g_str_equal (key, "permission"))
    lr_field_set_placeholder (field, _("not noted"));
  if (g_str_equal (key, "latitude-deg") || g_str_equal (key, "longitude-deg"))
    lr_field_set_placeholder (field, _("not noted"));
  if (g_str_equal (key, "full-load-rule"))
    /* Translators: as long as no local rule is named that lets circuits be loaded fully for hours */
    lr_field_set_placeholder (field, _("none named: 80 % for hours"));
}

/**
 * lr_details_add_fields:
 * @grid: where to
 * @table: of what they are properties
 * @keys: NULL-terminated; one that starts with "=" takes a row of its own
 * @units: how lengths are read and written
 *
 * Adds a field for each, with its standard values.
 */
void
lr_details_add_fields (LrFieldGrid       *grid,
                       const LrPropTable *table,
                       const char *const *keys,
                       LrUnits            units)
{
  for (; *keys != NULL; keys++)
    {
      gboolean is_wide = (*keys)[0] == '=';
      const LrProp *prop = lr_prop_table_find (table, *keys + (is_wide ? 1 : 0));

      if (prop != NULL && prop->label != NULL)
        lr_details_offer_usual (lr_field_grid_add (grid, prop, g_str_equal (prop->key, "north-deg") ? _("North") : NULL, units, is_wide));
    }
}
