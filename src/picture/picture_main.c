/* picture_main.c - lookroom-picture: a file on its standard input, pixels on its standard output
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "decode.h"

#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>

#define MAX_BYTES (64 * 1024 * 1024)
#define MAX_SECONDS 20
#define MAX_MEMORY (2048UL * 1024 * 1024)

/* of a sanitizer: terabytes, which no limit allows for */
#if defined(__SANITIZE_ADDRESS__)
#define HAS_SHADOW_MEMORY 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define HAS_SHADOW_MEMORY 1
#endif
#endif
#ifndef HAS_SHADOW_MEMORY
#define HAS_SHADOW_MEMORY 0
#endif

static void
set_limits (void)
{
  const struct rlimit seconds = { MAX_SECONDS, MAX_SECONDS }, memory = { MAX_MEMORY, MAX_MEMORY }, none = { 0, 0 };

  setrlimit (RLIMIT_CPU, &seconds);
  setrlimit (RLIMIT_CORE, &none);
  if (!HAS_SHADOW_MEMORY)
    setrlimit (RLIMIT_AS, &memory);
}

static GBytes *
read_all (void)
{
  GByteArray *bytes = g_byte_array_new ();
  guchar block[65536];
  gsize n;

  while (bytes->len <= MAX_BYTES && (n = fread (block, 1, sizeof block, stdin)) > 0)
    g_byte_array_append (bytes, block, (guint) n);
  return g_byte_array_free_to_bytes (bytes);
}

static gboolean
write_all (const LrDecodedHead *head,
           cairo_surface_t     *surface)
{
  const guchar *data = cairo_image_surface_get_data (surface);
  gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  gboolean is_written = fwrite (head, sizeof *head, 1, stdout) == 1;

  for (guint y = 0; is_written && y < head->height; y++)
    is_written = fwrite (data + y * stride, 4, head->width, stdout) == head->width;
  return is_written && fflush (stdout) == 0;
}

int
main (int    argc,
      char **argv)
{
  cairo_surface_t *surface = NULL;
  LrDecodedHead head;
  LrDecodeResult result;
  GBytes *bytes;

  if (argc != 3)
    return LR_DECODE_USAGE;

  set_limits ();
  bytes = read_all ();
  result = lr_decode (argv[1], bytes, atoi (argv[2]), &head, &surface);
  if (result == LR_DECODE_OK && !write_all (&head, surface))
    result = LR_DECODE_USAGE;
  if (surface != NULL)
    cairo_surface_destroy (surface);
  g_bytes_unref (bytes);
  return result;
}
