/* json_parse.c - from text to a tree of JSON
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * json-glib's tree, but not its parser. That lets much pass that is not JSON (single quotes, comments, repeated names, 0x10,
 * 1e999 as infinity), wraps integers past 64 bits, knows no line where a name is missing, and overflows the stack on deep
 * nesting; and it takes twice the time.
 */

#include "config.h"

#include "json_parse.h"

#include "json_scan.h"
#include "plan_reader.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define TOLD_DEPTH 10 /* how much of a path is told; places in a plan are less deep */

/* Where the walk is in an open object or list */
typedef struct
{
  LrJsonText name;      /* object: the member */
  gsize      index;     /* list: the element */
  gboolean   is_object;
} Frame;

typedef struct
{
  const char *text, *p;
  Frame      *frames;
  guint       depth, max_depth;
  GString    *scratch;  /* the last text, without its escapes */
  const char *wanted;   /* path to find, or NULL; then no tree is made */
  const char *found;
  GError    **error;
} Walk;

/* Each walk_ function moves on past what it walks and gives its node where @node is not NULL */
static gboolean walk_value (Walk      *walk,
                            JsonNode **node);

static guint
line_of (const char *text,
         const char *at)
{
  guint line = 1;

  for (const char *p = text; p < at; p++)
    if (*p == '\n')
      line++;

  return line;
}

static char *
dup_path (const Walk *walk,
          guint       depth)
{
  GString *path = g_string_new (NULL);
  char *valid; /* a long name may have been cut inside a character */

  for (guint i = 0; i < depth; i++)
    {
      const Frame *frame = &walk->frames[i];

      if (frame->is_object && frame->name.start != NULL)
        g_string_append_printf (path, "%s%.*s", i > 0 ? "." : "", (int) MIN (frame->name.length, 60), frame->name.start);
      else if (!frame->is_object)
        g_string_append_printf (path, "[%" G_GSIZE_FORMAT "]", frame->index);
    }

  valid = g_utf8_make_valid (path->str, (gssize) path->len);
  g_string_free (path, TRUE);

  return valid;
}

static gboolean
fail (Walk       *walk,
      int         code,
      const char *at,
      const char *what)
{
  g_autofree char *path = dup_path (walk, MIN (walk->depth, TOLD_DEPTH));
  const char *rest = walk->depth > TOLD_DEPTH ? "…" : "";
  guint line = line_of (walk->text, at);

  if (*path == '\0')
    g_set_error (walk->error, LR_PLAN_ERROR, code, _("line %u: %s"), line, what);
  else
    g_set_error (walk->error, LR_PLAN_ERROR, code, _("line %u, at %s%s: %s"), line, path, rest, what);

  return FALSE;
}

static gboolean
expected (Walk       *walk,
          const char *what)
{
  if (*walk->p == '\0')
    return fail (walk, LR_PLAN_ERROR_SYNTAX, walk->p, _("the file ends too early"));

  return fail (walk, LR_PLAN_ERROR_SYNTAX, walk->p, what);
}

static void
skip_space (Walk *walk)
{
  while (*walk->p == ' ' || *walk->p == '\t' || *walk->p == '\n' || *walk->p == '\r')
    walk->p++;
}

static gboolean
take (Walk *walk,
      char  c)
{
  skip_space (walk);
  if (*walk->p != c)
    return FALSE;
  walk->p++;

  return TRUE;
}

static gboolean
walk_text (Walk       *walk,
           LrJsonText *text)
{
  const char *fault = lr_json_scan_text (&walk->p, text);

  return fault == NULL || expected (walk, fault);
}

/* (transfer none): what a text says, until the next call */
static const char *
unescape (Walk             *walk,
          const LrJsonText *text)
{
  g_string_truncate (walk->scratch, 0);
  lr_json_unescape (text, walk->scratch);

  return walk->scratch->str;
}

static gboolean
walk_text_value (Walk      *walk,
                 JsonNode **node)
{
  LrJsonText text;

  if (!walk_text (walk, &text))
    return FALSE;
  if (node != NULL)
    {
      *node = json_node_new (JSON_NODE_VALUE);
      json_node_set_string (*node, unescape (walk, &text));
    }

  return TRUE;
}

static gboolean
walk_number (Walk      *walk,
             JsonNode **node)
{
  const char *start = walk->p;
  LrJsonNumber number;
  const char *fault = lr_json_scan_number (&walk->p, &number);

  if (fault != NULL)
    return expected (walk, fault);
  if (!number.fits)
    return fail (walk, LR_PLAN_ERROR_VALUE, start, _("this number is too large"));

  if (node != NULL)
    {
      *node = json_node_new (JSON_NODE_VALUE);
      if (number.is_integer)
        json_node_set_int (*node, number.integer);
      else
        json_node_set_double (*node, number.number);
    }

  return TRUE;
}

static gboolean
skip_word (Walk       *walk,
           const char *word)
{
  gsize length = strlen (word);

  if (strncmp (walk->p, word, length) != 0)
    return expected (walk, _("a value is expected"));
  walk->p += length;

  return TRUE;
}

static gboolean
walk_flag (Walk      *walk,
           JsonNode **node)
{
  gboolean flag = *walk->p == 't';

  if (!skip_word (walk, flag ? "true" : "false"))
    return FALSE;
  if (node != NULL)
    {
      *node = json_node_new (JSON_NODE_VALUE);
      json_node_set_boolean (*node, flag);
    }

  return TRUE;
}

static gboolean
walk_null (Walk      *walk,
           JsonNode **node)
{
  if (!skip_word (walk, "null"))
    return FALSE;
  if (node != NULL)
    *node = json_node_new (JSON_NODE_NULL);

  return TRUE;
}

/* Name, colon and value; @object may be NULL */
static gboolean
walk_member (Walk       *walk,
             Frame      *frame,
             JsonObject *object)
{
  JsonNode *member = NULL;
  const char *name_at;

  frame->name.start = NULL;
  skip_space (walk);
  name_at = walk->p;
  if (*walk->p != '"')
    return expected (walk, _("a name in double quotes is expected"));
  if (!walk_text (walk, &frame->name))
    return FALSE;
  if (object != NULL && json_object_has_member (object, unescape (walk, &frame->name)))
    return fail (walk, LR_PLAN_ERROR_SYNTAX, name_at, _("this name stands twice in the same object"));
  if (!take (walk, ':'))
    return expected (walk, _("“:” is expected"));
  if (!walk_value (walk, object != NULL ? &member : NULL))
    return FALSE;
  if (object != NULL)
    json_object_set_member (object, unescape (walk, &frame->name), member);

  return TRUE;
}

static gboolean
walk_object (Walk       *walk,
             Frame      *frame,
             JsonObject *object)
{
  if (take (walk, '}'))
    return TRUE;

  do
    if (!walk_member (walk, frame, object))
      return FALSE;
  while (take (walk, ','));

  return take (walk, '}') ? TRUE : expected (walk, _("“,” or “}” is expected"));
}

static gboolean
walk_list (Walk      *walk,
           Frame     *frame,
           JsonArray *array)
{
  if (take (walk, ']'))
    return TRUE;

  do
    {
      JsonNode *element = NULL;

      if (!walk_value (walk, array != NULL ? &element : NULL))
        return FALSE;
      if (array != NULL)
        json_array_add_element (array, element);
      frame->index++;
    }
  while (take (walk, ','));

  return take (walk, ']') ? TRUE : expected (walk, _("“,” or “]” is expected"));
}

static gboolean
walk_container (Walk      *walk,
                JsonNode **node)
{
  gboolean is_object = *walk->p == '{';
  g_autoptr (JsonObject) object = node != NULL && is_object ? json_object_new () : NULL;
  g_autoptr (JsonArray) array = node != NULL && !is_object ? json_array_new () : NULL;
  Frame *frame = &walk->frames[walk->depth];

  if (walk->depth == walk->max_depth)
    return fail (walk, LR_PLAN_ERROR_TOO_LARGE, walk->p, _("objects and lists are nested too deeply"));

  walk->p++;
  *frame = (Frame) { .is_object = is_object };
  walk->depth++;
  if (is_object ? !walk_object (walk, frame, object) : !walk_list (walk, frame, array))
    return FALSE;
  walk->depth--;

  if (node != NULL)
    {
      *node = json_node_new (is_object ? JSON_NODE_OBJECT : JSON_NODE_ARRAY);
      if (is_object)
        json_node_take_object (*node, g_steal_pointer (&object));
      else
        json_node_take_array (*node, g_steal_pointer (&array));
    }

  return TRUE;
}

static void
look_for_wanted (Walk *walk)
{
  g_autofree char *path = dup_path (walk, walk->depth);

  if (walk->found == NULL && strcmp (path, walk->wanted) == 0)
    walk->found = walk->p;
}

static gboolean
walk_value (Walk      *walk,
            JsonNode **node)
{
  skip_space (walk);
  if (walk->wanted != NULL)
    look_for_wanted (walk);

  switch (*walk->p)
    {
    case '{':
    case '[':
      return walk_container (walk, node);
    case '"':
      return walk_text_value (walk, node);
    case 't':
    case 'f':
      return walk_flag (walk, node);
    case 'n':
      return walk_null (walk, node);
    default:
      return walk_number (walk, node);
    }
}

static gboolean
walk_all (Walk      *walk,
          guint      max_depth,
          JsonNode **node)
{
  g_autofree Frame *frames = g_new0 (Frame, max_depth + 1);
  g_autoptr (GString) scratch = g_string_new (NULL);

  walk->p = walk->text;
  walk->frames = frames;
  walk->max_depth = max_depth;
  walk->scratch = scratch;
  if (!walk_value (walk, node))
    return FALSE;
  skip_space (walk);
  if (*walk->p == '\0')
    return TRUE;
  if (node != NULL)
    g_clear_pointer (node, json_node_unref);

  return fail (walk, LR_PLAN_ERROR_SYNTAX, walk->p, _("something follows the end"));
}

/**
 * lr_json_parse:
 * @text: NUL-terminated valid UTF-8
 * @max_depth: how deep objects and lists may be nested
 * @error: return location
 *
 * Of the numbers those with neither fraction nor exponent are integers.
 *
 * Source: RFC 8259, The JavaScript Object Notation (JSON) Data Interchange Format, sections 2 to 8.
 *
 * Returns: (transfer full) (nullable): the tree, if @text is one JSON value without repeated names and without numbers that
 *   a double or a 64-bit integer cannot hold; else the error names line and path
 */
JsonNode *
lr_json_parse (const char  *text,
               guint        max_depth,
               GError     **error)
{
  Walk walk = { .text = text, .error = error };
  JsonNode *node = NULL;

  return walk_all (&walk, max_depth, &node) ? node : NULL;
}

/**
 * lr_json_find_line:
 * @text: a text that was parsed
 * @path: of a value: "setups[0].name"
 *
 * Slow: for messages.
 *
 * Returns: the line on which the value begins, from 1, or 0 if there is no such value
 */
guint
lr_json_find_line (const char *text,
                   const char *path)
{
  Walk walk = { .text = text, .wanted = path };

  walk_all (&walk, LR_MAX_NESTING, NULL);

  return walk.found != NULL ? line_of (text, walk.found) : 0;
}
