/* symbols.c - things seen from above, at their true size
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "symbols.h"

#include "pen.h"

static const LrSymbolFunc symbols[LR_N_ITEM_KINDS] = {
  [LR_ITEM_PERSON] = lr_symbol_person,
  [LR_ITEM_CAMERA] = lr_symbol_camera,
  [LR_ITEM_LIGHT] = lr_symbol_light,
  [LR_ITEM_MICROPHONE] = lr_symbol_microphone,
  [LR_ITEM_PANEL] = lr_symbol_panel,
  [LR_ITEM_LEAD] = lr_symbol_lead,
  [LR_ITEM_FURNITURE] = lr_symbol_furniture,
  [LR_ITEM_DOOR] = lr_symbol_door,
  [LR_ITEM_WINDOW] = lr_symbol_window,
  [LR_ITEM_SOCKET] = lr_symbol_socket,
  [LR_ITEM_CIRCUIT] = lr_symbol_circuit,
  [LR_ITEM_NOISE] = lr_symbol_noise,
  [LR_ITEM_HOUSE_LIGHT] = lr_symbol_house_light,
  [LR_ITEM_LENS] = lr_symbol_lens,
};

/**
 * lr_symbol_draw:
 * @cr: a cairo context whose unit is a metre, y up, its origin and +x axis the item's own place and facing
 * @view: its scale gives line weights; its palette
 * @placed: the item; a thing on a wall has its origin in its middle on the inner face and +x into the room; a lavalier has
 *   its wearer's place
 * @setup: (nullable): where it stands; NULL for the Tray's pictures
 *
 * Draws one item without its tag, label and overlays.
 */
void
lr_symbol_draw (cairo_t        *cr,
                const LrView   *view,
                const LrPlaced *placed,
                const LrSetup  *setup)
{
  LrPen pen = lr_pen (cr, view, placed, setup);

  g_return_if_fail (placed->item->kind >= 0 && placed->item->kind < LR_N_ITEM_KINDS);

  cairo_save (cr);
  cairo_new_path (cr);
  symbols[placed->item->kind] (&pen);
  cairo_restore (cr);
}
