/* settings.c - what is remembered from one start to the next
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * In GSettings by the schema that is installed, else by the one in the build directory, else in memory until the program
 * ends. The values stand in a file of our own: they last without a service for settings, and without a session bus.
 */

#include "config.h"

#include "settings.h"

#define G_SETTINGS_ENABLE_BACKEND
#include <gio/gio.h>
#include <gio/gsettingsbackend.h>
#include <langinfo.h>

#define SCHEMA_ID "io.github.lookroom.Lookroom"
#define SCHEMA_PATH "/io/github/lookroom/Lookroom/"

/* (transfer full) (nullable) */
static GSettingsSchema *
find_schema (void)
{
  GSettingsSchemaSource *installed = g_settings_schema_source_get_default ();
  GSettingsSchema *schema = installed != NULL ? g_settings_schema_source_lookup (installed, SCHEMA_ID, TRUE) : NULL;
  g_autoptr (GSettingsSchemaSource) built = NULL;

  if (schema != NULL)
    return schema;

  built = g_settings_schema_source_new_from_directory (LR_BUILD_SCHEMA_DIR, installed, TRUE, NULL);
  return built != NULL ? g_settings_schema_source_lookup (built, SCHEMA_ID, FALSE) : NULL;
}

/* (transfer full) (nullable): the one that the environment asks for, else our file */
static GSettingsBackend *
new_backend (void)
{
  g_autofree char *path = NULL;

  if (g_getenv ("GSETTINGS_BACKEND") != NULL)
    return NULL;

  path = g_build_filename (g_get_user_config_dir (), "lookroom", "settings", NULL);
  return g_keyfile_settings_backend_new (path, SCHEMA_PATH, "lookroom");
}

static GSettings *
get_store (void)
{
  static gsize is_known = 0;
  static GSettings *store = NULL;

  if (g_once_init_enter (&is_known))
    {
      g_autoptr (GSettingsSchema) schema = find_schema ();
      g_autoptr (GSettingsBackend) backend = schema != NULL ? new_backend () : NULL;

      if (schema != NULL)
        store = g_settings_new_full (schema, backend, NULL);
      g_once_init_leave (&is_known, 1);
    }
  return store;
}

/* Values by key while there is no store */
static GHashTable *
get_memory (void)
{
  static GHashTable *memory = NULL;

  if (memory == NULL)
    memory = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify) g_variant_unref);
  return memory;
}

static GVariant *
read_value (const char *key)
{
  GVariant *value;

  if (get_store () != NULL)
    return g_settings_get_value (get_store (), key);

  value = g_hash_table_lookup (get_memory (), key);
  return value != NULL ? g_variant_ref (value) : NULL;
}

/* @key is static */
static void
write_value (const char *key,
             GVariant   *value)
{
  g_variant_ref_sink (value);
  if (get_store () != NULL)
    g_settings_set_value (get_store (), key, value);
  else
    g_hash_table_insert (get_memory (), (gpointer) key, g_variant_ref (value));
  g_variant_unref (value);
}

/* 1 metric, 2 as in the United States, by the locale's measurement category */
static LrUnits
locale_units (void)
{
#ifdef _NL_MEASUREMENT_MEASUREMENT
  const char *measurement = nl_langinfo (_NL_MEASUREMENT_MEASUREMENT);

  if (measurement != NULL && measurement[0] == 2)
    return LR_UNITS_IMPERIAL;
#endif
  return LR_UNITS_METRIC;
}

/**
 * lr_settings_get_units:
 *
 * Returns: the units that the user chose, or those of the locale
 */
LrUnits
lr_settings_get_units (void)
{
  g_autoptr (GVariant) value = read_value ("units");
  const char *word = value != NULL ? g_variant_get_string (value, NULL) : "locale";

  if (g_str_equal (word, "metric"))
    return LR_UNITS_METRIC;
  if (g_str_equal (word, "imperial"))
    return LR_UNITS_IMPERIAL;
  return locale_units ();
}

/**
 * lr_settings_set_units:
 * @units: chosen by the user, instead of the locale's
 */
void
lr_settings_set_units (LrUnits units)
{
  write_value ("units", g_variant_new_string (units == LR_UNITS_IMPERIAL ? "imperial" : "metric"));
}

typedef struct
{
  const char *word;
  guint       bit;
} Flag;

static const Flag families[] = {
  { "sight", LR_SHOW_SIGHT }, { "light", LR_SHOW_LIGHT }, { "sound", LR_SHOW_SOUND }, { "sun", LR_SHOW_SUN },
  { "power", LR_SHOW_POWER }, { NULL, 0 },
};

static const Flag lines[] = {
  { "thirds", LR_FRAME_THIRDS }, { "safe-areas", LR_FRAME_SAFE_AREAS }, { "recorded", LR_FRAME_RECORDED }, { NULL, 0 },
};

static guint
read_flags (const char *key,
            const Flag *flags,
            guint       fallback)
{
  g_autoptr (GVariant) value = read_value (key);
  g_autofree const char **words = value != NULL ? g_variant_get_strv (value, NULL) : NULL;
  guint bits = 0;

  if (words == NULL)
    return fallback;

  for (const Flag *flag = flags; flag->word != NULL; flag++)
    if (g_strv_contains (words, flag->word))
      bits |= flag->bit;
  return bits;
}

static void
write_flags (const char *key,
             const Flag *flags,
             guint       bits)
{
  GVariantBuilder words;

  g_variant_builder_init (&words, G_VARIANT_TYPE_STRING_ARRAY);
  for (const Flag *flag = flags; flag->word != NULL; flag++)
    if ((bits & flag->bit) != 0)
      g_variant_builder_add (&words, "s", flag->word);
  write_value (key, g_variant_builder_end (&words));
}

/**
 * lr_settings_get_shown:
 *
 * Returns: the families (LrShow) that were shown last
 */
guint
lr_settings_get_shown (void)
{
  return read_flags ("shown", families, LR_SHOW_SIGHT);
}

/**
 * lr_settings_set_shown:
 * @shown: families (LrShow) drawn on the sheet
 */
void
lr_settings_set_shown (guint shown)
{
  write_flags ("shown", families, shown);
}

/**
 * lr_settings_get_frame_lines:
 *
 * Returns: what (LrFrameLines) was drawn in the viewfinders last
 */
guint
lr_settings_get_frame_lines (void)
{
  return read_flags ("frame-lines", lines, LR_FRAME_ALL_LINES);
}

/**
 * lr_settings_set_frame_lines:
 * @shown: what (LrFrameLines) is drawn in the viewfinders
 */
void
lr_settings_set_frame_lines (guint shown)
{
  write_flags ("frame-lines", lines, shown);
}

/**
 * lr_settings_get_dark:
 *
 * Returns: whether the window is dark
 */
gboolean
lr_settings_get_dark (void)
{
  g_autoptr (GVariant) value = read_value ("dark");

  return value != NULL && g_variant_get_boolean (value);
}

/**
 * lr_settings_set_dark:
 * @is_dark: whether the window is dark
 */
void
lr_settings_set_dark (gboolean is_dark)
{
  write_value ("dark", g_variant_new_boolean (is_dark));
}

/**
 * lr_settings_get_cut:
 *
 * Returns: whether two cameras are shown side by side, as they will be cut, instead of one above the other
 */
gboolean
lr_settings_get_cut (void)
{
  g_autoptr (GVariant) value = read_value ("cut");

  return value != NULL && g_variant_get_boolean (value);
}

/**
 * lr_settings_set_cut:
 * @has_cut: whether two cameras are shown side by side
 */
void
lr_settings_set_cut (gboolean has_cut)
{
  write_value ("cut", g_variant_new_boolean (has_cut));
}

/**
 * lr_settings_dup_last_file:
 *
 * Returns: (transfer full): path of the plan that was open last, "" for none
 */
char *
lr_settings_dup_last_file (void)
{
  g_autoptr (GVariant) value = read_value ("last-file");

  return value != NULL ? g_variant_dup_string (value, NULL) : g_strdup ("");
}

/**
 * lr_settings_set_last_file:
 * @path: of the plan that was opened or saved last
 */
void
lr_settings_set_last_file (const char *path)
{
  write_value ("last-file", g_variant_new_string (path));
}

/**
 * lr_settings_get_window:
 * @width: (out): in logical pixels
 * @height: (out): in logical pixels
 * @is_maximized: (out): whether it filled the screen
 *
 * How the window was when it was closed last.
 */
void
lr_settings_get_window (int      *width,
                        int      *height,
                        gboolean *is_maximized)
{
  g_autoptr (GVariant) value = read_value ("window");

  *width = 1600;
  *height = 1000;
  *is_maximized = FALSE;
  if (value != NULL)
    g_variant_get (value, "(iib)", width, height, is_maximized);
}

/**
 * lr_settings_set_window:
 * @width: in logical pixels
 * @height: in logical pixels
 * @is_maximized: whether it fills the screen
 */
void
lr_settings_set_window (int      width,
                        int      height,
                        gboolean is_maximized)
{
  write_value ("window", g_variant_new ("(iib)", width, height, is_maximized));
}
