/* json_strict.c - is this text JSON?
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * json-glib lets much pass that is not JSON (single quotes, comments, repeated names, 0x10, 1e999 as infinity), wraps
 * integers past 64 bits, knows no line where a name is missing, and overflows the stack on deep nesting. So every text is
 * walked here first, by the grammar of RFC 8259.
 */

#include "config.h"

#include "json_strict.h"

#include "plan_reader.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* A name in the text, without its quotes */
typedef struct
{
  const char *start;
  gsize       length;
} Span;

/* Where the walk is in an open object or list */
typedef struct
{
  Span     name;        /* object: the member */
  gsize    index;       /* list: the element */
  gboolean is_object;
} Frame;

typedef struct
{
  const char *text, *p;
  Frame      *frames;
  guint       depth, max_depth;
  GArray     *names;    /* Span: of every open object, one after the other */
  const char *wanted;   /* path to find, or NULL */
  const char *found;
  GError    **error;
} Walk;

static gboolean walk_value (Walk *walk);

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
dup_path (const Walk *walk)
{
  GString *path = g_string_new (NULL);
  char *valid; /* a long name may have been cut inside a character */

  for (guint i = 0; i < walk->depth; i++)
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
  g_autofree char *path = dup_path (walk);
  guint line = line_of (walk->text, at);

  if (*path == '\0')
    g_set_error (walk->error, LR_PLAN_ERROR, code, _("line %u: %s"), line, what);
  else
    g_set_error (walk->error, LR_PLAN_ERROR, code, _("line %u, at %s: %s"), line, path, what);

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
walk_escape (Walk *walk)
{
  const char *p = walk->p + 1;

  if (*p == 'u')
    {
      for (int i = 1; i <= 4; i++)
        if (!g_ascii_isxdigit (p[i]))
          return expected (walk, _("“\\u” is not followed by four digits"));
      if (strncmp (p, "u0000", 5) == 0)
        return expected (walk, _("a text holds the character 0"));
      walk->p += 6;
      return TRUE;
    }
  if (*p == '\0' || strchr ("\"\\/bfnrt", *p) == NULL)
    return expected (walk, _("a backslash is followed by a character that cannot be escaped"));
  walk->p += 2;

  return TRUE;
}

static gboolean
walk_text (Walk *walk,
           Span *span)
{
  span->start = ++walk->p;
  while (*walk->p != '"')
    {
      if ((guchar) *walk->p < 0x20)
        return expected (walk, _("a text holds a control character or is not closed"));
      if (*walk->p != '\\')
        walk->p++;
      else if (!walk_escape (walk))
        return FALSE;
    }
  span->length = (gsize) (walk->p++ - span->start);

  return TRUE;
}

static gboolean
skip_digits (Walk *walk)
{
  if (!g_ascii_isdigit (*walk->p))
    return FALSE;
  while (g_ascii_isdigit (*walk->p))
    walk->p++;

  return TRUE;
}

/* Whether an integer fits 64 bits, and any other number a double. Up to 18 characters always fit. */
static gboolean
fits (const char *start,
      gsize       length,
      gboolean    is_integer)
{
  g_autofree char *digits = NULL;

  if (!is_integer)
    return isfinite (g_ascii_strtod (start, NULL));
  if (length <= 18)
    return TRUE;
  digits = g_strndup (start, length);

  return g_ascii_string_to_signed (digits, 10, G_MININT64, G_MAXINT64, NULL, NULL);
}

static gboolean
walk_number (Walk *walk)
{
  const char *start = walk->p;
  gboolean is_integer = TRUE;

  if (*walk->p == '-')
    walk->p++;
  if (*walk->p == '0')
    walk->p++;
  else if (!skip_digits (walk))
    return expected (walk, _("a value is expected"));
  if (*walk->p == '.')
    {
      is_integer = FALSE;
      walk->p++;
      if (!skip_digits (walk))
        return expected (walk, _("a digit is expected"));
    }
  if (*walk->p == 'e' || *walk->p == 'E')
    {
      is_integer = FALSE;
      walk->p++;
      if (*walk->p == '+' || *walk->p == '-')
        walk->p++;
      if (!skip_digits (walk))
        return expected (walk, _("a digit is expected"));
    }

  if (!fits (start, (gsize) (walk->p - start), is_integer))
    return fail (walk, LR_PLAN_ERROR_VALUE, start, _("this number is too large"));

  return TRUE;
}

static gboolean
walk_word (Walk       *walk,
           const char *word)
{
  gsize length = strlen (word);

  if (strncmp (walk->p, word, length) != 0)
    return expected (walk, _("a value is expected"));
  walk->p += length;

  return TRUE;
}

static int
compare_spans (gconstpointer a,
               gconstpointer b)
{
  const Span *x = a, *y = b;
  int order = memcmp (x->start, y->start, MIN (x->length, y->length));

  return order != 0 ? order : (x->length > y->length) - (x->length < y->length);
}

/* The names of the object that ends here are those behind @first */
static gboolean
check_names (Walk *walk,
             guint first)
{
  Span *names = &g_array_index (walk->names, Span, first);
  guint n = walk->names->len - first;

  qsort (names, n, sizeof *names, compare_spans);
  for (guint i = 1; i < n; i++)
    if (compare_spans (&names[i - 1], &names[i]) == 0)
      {
        walk->frames[walk->depth - 1].name = names[i];
        return fail (walk, LR_PLAN_ERROR_SYNTAX, MAX (names[i - 1].start, names[i].start),
                     _("this name stands twice in the same object"));
      }
  g_array_set_size (walk->names, first);

  return TRUE;
}

static gboolean
walk_object (Walk  *walk,
             Frame *frame)
{
  guint first = walk->names->len;

  if (take (walk, '}'))
    return TRUE;

  do
    {
      frame->name.start = NULL;
      skip_space (walk);
      if (*walk->p != '"')
        return expected (walk, _("a name in double quotes is expected"));
      if (!walk_text (walk, &frame->name))
        return FALSE;
      g_array_append_val (walk->names, frame->name);
      if (!take (walk, ':'))
        return expected (walk, _("“:” is expected"));
      if (!walk_value (walk))
        return FALSE;
    }
  while (take (walk, ','));

  return take (walk, '}') ? check_names (walk, first) : expected (walk, _("“,” or “}” is expected"));
}

static gboolean
walk_list (Walk  *walk,
           Frame *frame)
{
  if (take (walk, ']'))
    return TRUE;

  do
    {
      if (!walk_value (walk))
        return FALSE;
      frame->index++;
    }
  while (take (walk, ','));

  return take (walk, ']') ? TRUE : expected (walk, _("“,” or “]” is expected"));
}

static gboolean
walk_container (Walk *walk)
{
  gboolean is_object = *walk->p == '{';
  gboolean ok;

  if (walk->depth == walk->max_depth)
    return fail (walk, LR_PLAN_ERROR_TOO_LARGE, walk->p, _("objects and lists are nested too deeply"));

  walk->p++;
  walk->frames[walk->depth] = (Frame) { .is_object = is_object };
  walk->depth++;
  ok = is_object ? walk_object (walk, &walk->frames[walk->depth - 1]) : walk_list (walk, &walk->frames[walk->depth - 1]);
  if (ok)
    walk->depth--;

  return ok;
}

static void
look_for_wanted (Walk *walk)
{
  g_autofree char *path = dup_path (walk);

  if (walk->found == NULL && strcmp (path, walk->wanted) == 0)
    walk->found = walk->p;
}

static gboolean
walk_value (Walk *walk)
{
  Span span;

  skip_space (walk);
  if (walk->wanted != NULL)
    look_for_wanted (walk);

  switch (*walk->p)
    {
    case '{':
    case '[':
      return walk_container (walk);
    case '"':
      return walk_text (walk, &span);
    case 't':
      return walk_word (walk, "true");
    case 'f':
      return walk_word (walk, "false");
    case 'n':
      return walk_word (walk, "null");
    default:
      return walk_number (walk);
    }
}

static gboolean
walk_all (Walk  *walk,
          guint  max_depth)
{
  g_autofree Frame *frames = g_new0 (Frame, max_depth);
  g_autoptr (GArray) names = g_array_new (FALSE, FALSE, sizeof (Span));

  walk->p = walk->text;
  walk->frames = frames;
  walk->max_depth = max_depth;
  walk->names = names;
  if (!walk_value (walk))
    return FALSE;
  skip_space (walk);
  if (*walk->p != '\0')
    return fail (walk, LR_PLAN_ERROR_SYNTAX, walk->p, _("something follows the end"));

  return TRUE;
}

/**
 * lr_json_check:
 * @text: NUL-terminated valid UTF-8
 * @max_depth: how deep objects and lists may be nested
 * @error: return location
 *
 * Source: RFC 8259, The JavaScript Object Notation (JSON) Data Interchange Format, sections 2 to 8.
 *
 * Returns: whether @text is one JSON value without repeated names and without numbers that a double or, if they have
 *   neither fraction nor exponent, a 64-bit integer cannot hold; else the error names line and path
 */
gboolean
lr_json_check (const char  *text,
               guint        max_depth,
               GError     **error)
{
  Walk walk = { .text = text, .error = error };

  return walk_all (&walk, max_depth);
}

/**
 * lr_json_find_line:
 * @text: a text that passed lr_json_check()
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

  walk_all (&walk, LR_MAX_NESTING);

  return walk.found != NULL ? line_of (text, walk.found) : 0;
}
