/* item_kinds.c - what each kind of item has: one table a kind, one row a member
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ranges are physical and wide: they keep nonsense out, not unusual gear. Defaults are what a solo interview shooter
 * most often has (common practice, no source); stand radii are those of the drawn symbols.
 */

#include "config.h"

#include "item.h"
#include "prop_rows.h"

#include <glib/gi18n-lib.h>

#define REACH_M 500.0 /* coordinates: a hall of 200 m and what stands outside it */

#define ROW_OWNER LrItem

/* What every item has, and how its place is given */

#define COMMON_ROWS \
  TEXT ("id", NULL, id), \
  TEXT ("name", N_("Name"), name), \
  TEXT_OR_NONE ("tag", N_("Tag"), tag), \
  ROW ("kit", NULL, LR_PROP_REF, kit, .target = LR_TARGET_KIT, .is_optional = TRUE), \
  TEXT_OR_NONE ("note", N_("Note"), note)

static const LrChoice goes_with[] = {
  { "usual", N_("As usual") }, { "set", N_("Moves with the set") }, { "wall", N_("Stays with a wall") },
  { "room", N_("Stays where it is") }, { NULL, NULL },
};

static const LrProp floor_rows[] = {
  COMMON_ROWS,
  LENGTH ("x-mm", N_("Across"), at_m.x, -REACH_M, REACH_M, 0.0),
  LENGTH ("y-mm", N_("Up"), at_m.y, -REACH_M, REACH_M, 0.0),
  ANGLE ("facing-deg", N_("Facing"), facing_rad, -180, 180, 0),
  ROW ("goes-with", N_("As found"), LR_PROP_CHOICE, goes_with, .max = LR_GOES_ROOM, .choices = goes_with, .is_optional = TRUE),
};

static const LrProp wall_rows[] = {
  COMMON_ROWS,
  COUNT ("wall", NULL, wall, 0, 63, 0),
  LENGTH ("along-mm", N_("From right corner"), along_m, 0.0, REACH_M, 0.0),
};

static const LrProp bare_rows[] = {
  COMMON_ROWS,
};

static const LrPropTable common_tables[] = {
  [LR_PLACE_FLOOR] = TABLE (floor_rows),
  [LR_PLACE_WALL]  = TABLE (wall_rows),
  [LR_PLACE_PATH]  = TABLE (bare_rows),
  [LR_PLACE_NONE]  = TABLE (bare_rows),
};

/* People. Stature and eyes: ANSUR II spans 1.5 to 1.9 m (p5 woman to p95 man); children and chairs on stages are allowed
 * for. Skin: between the "dark skin" 10.1 % and the "light skin" 35 % of the 24-patch color chart, in stops. */

static const LrChoice roles[] = {
  { "subject", N_("Subject") }, { "interviewer", N_("Interviewer") }, { "other", N_("Person") }, { NULL, NULL },
};
static const LrChoice postures[] = { { "seated", N_("Seated") }, { "standing", N_("Standing") }, { NULL, NULL } };

static const LrProp person_rows[] = {
  CHOICE ("role", N_("Role"), person.role, roles, LR_ROLE_SUBJECT),
  CHOICE ("posture", N_("Posture"), person.posture, postures, LR_POSTURE_SEATED),
  LENGTH ("stature-mm", N_("Stature"), person.stature_m, 0.5, 2.5, 1.7),
  LENGTH ("seat-height-mm", N_("Seat height"), person.seat_height_m, 0.1, 1.5, 0.45),
  LENGTH_OR_NONE ("eye-height-mm", N_("Eye height, measured"), person.eye_height_m, 0.3, 3.5),
  REF ("looks-at", N_("Looks at"), person.looks_at, "person"),
  FLAG ("has-glasses", N_("Glasses"), person.has_glasses, FALSE),
  SHARE ("skin-reflectance-pct", N_("Skin reflectance"), person.skin_reflectance, 0.03, 0.8, 0.2),
  SHARE ("clothing-reflectance-pct", N_("Clothes reflectance"), person.clothing_reflectance, 0.01, 0.95, 0.2),
  TEXT_OR_NONE ("clothing", N_("Clothes"), person.clothing),
  FLAG_IF_SET ("uses-wheelchair", N_("Comes in a wheelchair"), person.uses_wheelchair),
};

static const LrChoice aspects[] = {
  { "sensor", N_("As recorded") }, { "16:9", N_("16:9") }, { "9:16", N_("9:16") }, { "1:1", N_("1:1") },
  { "4:5", N_("4:5") }, { "2.39:1", N_("2.39:1") }, { NULL, NULL },
};

static const LrProp camera_rows[] = {
  FINE ("sensor-width-mm", N_("Sensor width"), camera.sensor_width_m, 0.001, 0.1, 0.036),
  FINE ("sensor-height-mm", N_("Sensor height"), camera.sensor_height_m, 0.001, 0.1, 0.02025),
  NUMBER ("sensor-crop", N_("Sensor crop"), camera.sensor_crop, 1.0, 4.0, 1.0, 3, "×"),
  NUMBER ("squeeze", N_("Squeeze"), camera.squeeze, 1.0, 2.5, 1.0, 4, "×"),
  CHOICE ("aspect", N_("Delivered as"), camera.aspect, aspects, LR_ASPECT_SENSOR),
  REF ("lens", N_("Lens"), camera.lens, "lens"),
  FINE ("focal-mm", N_("Focal length"), camera.focal_m, 0.001, 2.0, 0.05),
  NUMBER ("f-number", N_("Stop"), camera.f_number, 0.7, 64.0, 2.8, 2, NULL),
  ROW ("coc-mm", N_("Blur disc limit"), LR_PROP_FINE_LENGTH, camera.coc_m, .min = 1e-6, .max = 5e-4, .is_optional = TRUE),
  LENGTH_OR_NONE ("focus-mm", N_("Focus"), camera.focus_m, 0.01, 1000.0),
  NUMBER ("frame-rate-fps", N_("Frame rate"), camera.frame_rate_fps, 1.0, 1000.0, 25.0, 3, "fps"),
  NUMBER ("shutter-s", N_("Shutter"), camera.shutter_s, 1e-5, 10.0, 0.02, 9, "s"),
  NUMBER ("iso", N_("ISO"), camera.iso, 12.0, 819200.0, 400.0, 0, NULL),
  NUMBER_OR_NONE ("native-iso", N_("Native ISO"), camera.native_iso, 12.0, 819200.0, 0, NULL),
  NUMBER_OR_NONE ("second-native-iso", N_("Second native ISO"), camera.second_native_iso, 12.0, 819200.0, 0, NULL),
  NUMBER ("nd-stops", N_("ND"), camera.nd_stops, 0.0, 20.0, 0.0, 2, N_("stops")),
  NUMBER ("white-balance-k", N_("White balance"), camera.white_balance_k, 1500.0, 20000.0, 5600.0, 0, "K"),
  LENGTH ("lens-height-mm", N_("Lens height"), camera.lens_height_m, 0.01, 20.0, 1.2),
  REF ("aims-at", N_("Aims at"), camera.aims_at, LR_TARGET_ITEM),
  SHARE ("across-pct", N_("Aim across the frame"), camera.across, 0.0, 1.0, 0.5),
  SHARE ("down-pct", N_("Aim down the frame"), camera.down, 0.0, 1.0, 0.333),
  ANGLE ("tilt-deg", N_("Tilt"), camera.tilt_rad, -90, 90, 0),
  LENGTH ("stand-radius-mm", N_("Stand radius"), camera.stand_radius_m, 0.0, 3.0, 0.48),
  NUMBER ("draw-w", N_("Takes"), camera.draw_w, 0.0, 5000.0, 0.0, 1, "W"),
  NUMBER_OR_NONE ("battery-wh", N_("Battery"), camera.battery_wh, 1.0, 2000.0, 1, "Wh"),
  NUMBER_OR_NONE ("data-rate-mbit-s", N_("Records"), camera.data_rate_mbit_s, 0.1, 50000.0, 1, "Mbit/s"),
  NUMBER_OR_NONE ("card-gb", N_("Card"), camera.card_gb, 1.0, 100000.0, 0, "GB"),
};

static const LrChoice light_forms[] = {
  { "wide", N_("Wide emitter") }, { "panel", N_("Small panel") }, { "point", N_("Point source") }, { NULL, NULL },
};
static const LrChoice light_shapes[] = { { "rectangle", N_("Rectangle") }, { "round", N_("Round") }, { NULL, NULL } };
static const LrChoice light_jobs[] = {
  { "key", N_("Key") }, { "fill", N_("Fill") }, { "back", N_("Back") }, { "wall", N_("Wall") },
  { "other", N_("Other") }, { NULL, NULL },
};

static const LrProp light_rows[] = {
  CHOICE ("form", N_("Form"), light.form, light_forms, LR_LIGHT_WIDE),
  CHOICE ("job", N_("Job"), light.job, light_jobs, LR_JOB_KEY),
  ROW ("shape", N_("Shape"), LR_PROP_CHOICE, light.shape, .max = LR_SHAPE_ROUND, .choices = light_shapes, .is_optional = TRUE),
  LENGTH ("width-mm", N_("Width"), light.width_m, 0.001, 20.0, 0.9),
  LENGTH ("height-mm", N_("Height"), light.height_m, 0.001, 20.0, 0.9),
  NUMBER ("power-w", N_("Takes at full"), light.power_w, 0.0, 50000.0, 200.0, 1, "W"),
  NUMBER ("output-lm", N_("Output"), light.output_lm, 0.0, 1e7, 10000.0, 0, "lm"),
  NUMBER_OR_NONE ("output-lx", N_("Measured level"), light.output_lx, 1.0, 1e7, 0, "lx"),
  LENGTH_OR_NONE ("output-at-mm", N_("Measured from"), light.output_at_m, 0.1, 100.0),
  NUMBER_OR_NONE ("output-cd", N_("On its axis"), light.output_cd, 1.0, 1e8, 0, "cd"),
  ANGLE ("beam-deg", N_("Beam"), light.beam_rad, 0.5, 360, 110),
  ROW ("field-deg", N_("Field"), LR_PROP_ANGLE, light.field_rad, .min = 0.5 * LR_DEG, .max = 360 * LR_DEG, .is_optional = TRUE),
  TEXT_OR_NONE ("photometric-file", N_("Photometric file"), light.photometric_file),
  NUMBER ("color-temperature-k", N_("Color temperature"), light.color_temperature_k, 1500.0, 20000.0, 5600.0, 0, "K"),
  NUMBER_OR_NONE ("color-temperature-min-k", N_("Warmest setting"), light.color_temperature_min_k, 1500.0, 20000.0, 0, "K"),
  NUMBER_OR_NONE ("color-temperature-max-k", N_("Coldest setting"), light.color_temperature_max_k, 1500.0, 20000.0, 0, "K"),
  LENGTH ("lamp-height-mm", N_("Lamp height"), light.lamp_height_m, 0.0, 50.0, 1.9),
  REF ("aims-at", N_("Aims at"), light.aims_at, LR_TARGET_ITEM),
  LENGTH_OR_NONE ("aim-height-mm", N_("Aim height"), light.aim_height_m, 0.001, 50.0),
  ANGLE ("tilt-deg", N_("Tilt"), light.tilt_rad, -90, 90, 0),
  SHARE ("dim-pct", N_("Dimmed to"), light.dim, 0.0, 1.0, 1.0),
  LENGTH ("stand-radius-mm", N_("Stand radius"), light.stand_radius_m, 0.0, 3.0, 0.5),
  NUMBER ("mass-kg", N_("Mass on the stand"), light.mass_kg, 0.0, 200.0, 3.0, 2, "kg"),
  TEXT_OR_NONE ("modifier", N_("Modifier"), light.modifier),
  ROW ("modifier-pass-pct", N_("Modifier passes"), LR_PROP_SHARE, light.modifier_pass, .min = 0.01, .max = 1.0, .is_optional = TRUE),
  ROW ("modifier-beam-deg", N_("Beam past it"), LR_PROP_ANGLE, light.modifier_beam_rad, .min = 0.5 * LR_DEG, .max = 180 * LR_DEG,
       .is_optional = TRUE),
  NUMBER_OR_NONE ("power-factor", N_("Power factor"), light.power_factor, 0.2, 1.0, 2, NULL),
  NUMBER_OR_NONE ("stand-mass-kg", N_("Stand’s mass"), light.stand_mass_kg, 0.1, 200.0, 2, "kg"),
  NUMBER_OR_NONE ("bag-kg", N_("Sandbag"), light.bag_kg, 0.1, 200.0, 2, "kg"),
  NUMBER_OR_NONE ("battery-wh", N_("Battery"), light.battery_wh, 1.0, 2000.0, 1, "Wh"),
};

static const LrChoice microphone_forms[] = {
  { "boom", N_("Boom") }, { "lavalier", N_("Lavalier") }, { "stand", N_("On a stand") },
  { "camera", N_("On a camera") }, { NULL, NULL },
};

static const LrProp microphone_rows[] = {
  CHOICE ("form", N_("Form"), microphone.form, microphone_forms, LR_MIC_BOOM),
  SHARE ("omni-share-pct", N_("Omni share of the pattern"), microphone.omni_share, 0.0, 1.0, 0.3),
  LENGTH_OR_NONE ("tube-mm", N_("Interference tube"), microphone.tube_m, 0.01, 1.0),
  LENGTH ("tip-x-mm", N_("Capsule across"), microphone.tip_x_m, -REACH_M, REACH_M, 0.0),
  LENGTH ("tip-y-mm", N_("Capsule up"), microphone.tip_y_m, -REACH_M, REACH_M, 0.0),
  LENGTH ("tip-height-mm", N_("Capsule height"), microphone.tip_height_m, 0.0, 20.0, 1.7),
  REF ("aims-at", N_("Aims at"), microphone.aims_at, "person"),
  REF ("worn-by", N_("Worn by"), microphone.worn_by, "person"),
  ROW ("mounted-on", N_("On camera"), LR_PROP_REF, microphone.mounted_on, .target = "camera", .is_optional = TRUE),
  LENGTH ("stand-radius-mm", N_("Stand radius"), microphone.stand_radius_m, 0.0, 3.0, 0.5),
  NUMBER ("arm-mass-kg", N_("Arm mass"), microphone.arm_mass_kg, 0.0, 20.0, 0.8, 3, "kg"),
  NUMBER ("capsule-mass-kg", N_("Microphone mass"), microphone.capsule_mass_kg, 0.0, 10.0, 0.35, 3, "kg"),
  LENGTH ("short-end-mm", N_("Arm behind the post"), microphone.short_end_m, 0.0, 5.0, 0.55),
  NUMBER_OR_NONE ("stand-mass-kg", N_("Stand’s mass"), microphone.stand_mass_kg, 0.1, 200.0, 2, "kg"),
  NUMBER_OR_NONE ("counterweight-kg", N_("Counterweight"), microphone.counterweight_kg, 0.1, 100.0, 2, "kg"),
  NUMBER_OR_NONE ("bag-kg", N_("Sandbag"), microphone.bag_kg, 0.1, 200.0, 2, "kg"),
};

static const LrChoice panel_forms[] = {
  { "reflector", N_("Reflector") }, { "flag", N_("Flag") }, { "backdrop", N_("Backdrop") }, { NULL, NULL },
};

static const LrProp panel_rows[] = {
  CHOICE ("form", N_("Form"), panel.form, panel_forms, LR_PANEL_REFLECTOR),
  LENGTH ("width-mm", N_("Width"), panel.width_m, 0.01, 50.0, 1.0),
  LENGTH ("height-mm", N_("Height"), panel.height_m, 0.01, 50.0, 1.0),
  LENGTH ("bottom-mm", N_("Lower edge"), panel.bottom_m, 0.0, 50.0, 0.7),
  SHARE ("reflectance-pct", N_("Reflectance"), panel.reflectance, 0.0, 1.0, 0.8),
  LENGTH ("stand-radius-mm", N_("Stand radius"), panel.stand_radius_m, 0.0, 3.0, 0.3),
  NUMBER_OR_NONE ("mass-kg", N_("Mass on the stand"), panel.mass_kg, 0.1, 200.0, 2, "kg"),
  NUMBER_OR_NONE ("stand-mass-kg", N_("Stand’s mass"), panel.stand_mass_kg, 0.1, 200.0, 2, "kg"),
  NUMBER_OR_NONE ("bag-kg", N_("Sandbag"), panel.bag_kg, 0.1, 200.0, 2, "kg"),
};

static const LrProp lead_rows[] = {
  LENGTH ("length-mm", N_("Length"), lead.length_m, 0.1, 500.0, 10.0),
  REF ("socket", N_("Plugged into"), lead.socket, "socket"),
  REF ("feeds", N_("Feeds"), lead.feeds, LR_TARGET_ITEM),
  NUMBER ("core-mm2", N_("Core"), lead.core_mm2, 0.1, 100.0, 1.5, 2, "mm²"),
  FLAG_IF_SET ("is-wound", N_("Still wound on a reel"), lead.is_wound),
  NUMBER_OR_NONE ("wound-limit-w", N_("Bears wound up"), lead.wound_limit_w, 1.0, 50000.0, 0, "W"),
};

static const LrChoice furniture_forms[] = {
  { "table", N_("Table") }, { "chair", N_("Chair") }, { "sofa", N_("Sofa") }, { "cabinet", N_("Cabinet") },
  { "chest", N_("Chest") }, { "radiator", N_("Radiator") }, { "box", N_("Box") }, { "cylinder", N_("Cylinder") },
  { NULL, NULL },
};

static const LrChoice covers[] = {
  { "usual", N_("As usual") }, { "hard", N_("Hard") }, { "soft", N_("Upholstered") }, { NULL, NULL },
};

static const LrProp furniture_rows[] = {
  CHOICE ("form", N_("Form"), furniture.form, furniture_forms, LR_FURNITURE_TABLE),
  LENGTH ("length-mm", N_("Depth"), furniture.length_m, 0.01, 100.0, 0.7),
  LENGTH ("width-mm", N_("Width"), furniture.width_m, 0.01, 100.0, 1.4),
  LENGTH ("height-mm", N_("Height"), furniture.height_m, 0.01, 50.0, 0.74),
  LENGTH ("bottom-mm", N_("Lowest part"), furniture.bottom_m, 0.0, 50.0, 0.0),
  FLAG ("is-fixed", N_("Must stay"), furniture.is_fixed, FALSE),
  SHARE ("reflectance-pct", N_("Reflectance"), furniture.reflectance, 0.0, 1.0, 0.3),
  ROW ("cover", N_("Cover"), LR_PROP_CHOICE, furniture.cover, .max = G_N_ELEMENTS (covers) - 2, .choices = covers, .is_optional = TRUE),
};

/* Walls run anticlockwise: where one begins is on the right of who looks at it from inside */
static const LrChoice hinges[] = { { "start", N_("Right") }, { "end", N_("Left") }, { NULL, NULL } };
static const LrChoice swings[] = {
  { "in", N_("Into the room") }, { "out", N_("Out of the room") }, { "none", N_("Slides or has no leaf") }, { NULL, NULL },
};

static const LrProp door_rows[] = {
  LENGTH ("width-mm", N_("Width"), door.width_m, 0.2, 30.0, 0.85),
  LENGTH ("height-mm", N_("Height"), door.height_m, 0.2, 30.0, 2.05),
  CHOICE ("hinge", N_("Hinge, from inside"), door.hinge, hinges, LR_HINGE_START),
  CHOICE ("swing", N_("Swings"), door.swing, swings, LR_SWING_IN),
  FLAG ("is-exit", N_("Way out"), door.is_exit, TRUE),
};

static const LrChoice blinds[] = {
  { "none", N_("No blind") }, { "up", N_("Up") }, { "half", N_("Half down") }, { "down", N_("Down") }, { NULL, NULL },
};

static const LrProp window_rows[] = {
  LENGTH ("width-mm", N_("Width"), window.width_m, 0.1, 200.0, 1.2),
  LENGTH ("sill-mm", N_("Sill"), window.sill_m, 0.0, 50.0, 0.9),
  LENGTH ("head-mm", N_("Head"), window.head_m, 0.05, 50.0, 2.1),
  CHOICE ("blind", N_("Blind"), window.blind, blinds, LR_BLIND_NONE),
};

static const LrProp socket_rows[] = {
  LENGTH ("height-mm", N_("Height"), socket.height_m, 0.0, 20.0, 0.3),
  REF ("circuit", N_("Circuit"), socket.circuit, "circuit"),
  COUNT ("outlets", N_("Outlets"), socket.outlets, 1, 24, 2),
};

static const LrProp circuit_rows[] = {
  NUMBER ("volts-v", N_("Volts"), circuit.volts_v, 12.0, 500.0, 230.0, 0, "V"),
  NUMBER ("amps-a", N_("Breaker"), circuit.amps_a, 1.0, 400.0, 16.0, 1, "A"),
  NUMBER_OR_NONE ("known-load-w", N_("Already on it"), circuit.known_load_w, 0.0, 100000.0, 0, "W"),
};

static const LrProp noise_rows[] = {
  NUMBER ("level-db", N_("Level at 1 m"), noise.level_db, -20.0, 140.0, 40.0, 1, "dB"),
  LENGTH ("height-mm", N_("Height"), noise.height_m, 0.0, 50.0, 1.0),
  LENGTH_OR_NONE ("length-mm", N_("Length"), noise.length_m, 0.01, 50.0),
  LENGTH_OR_NONE ("width-mm", N_("Width"), noise.width_m, 0.01, 50.0),
  FLAG ("can-switch-off", N_("Can be switched off"), noise.can_switch_off, FALSE),
  FLAG ("is-off", N_("Off"), noise.is_off, FALSE),
  TEXT_OR_NONE ("when", N_("When"), noise.when),
};

static const LrProp house_light_rows[] = {
  LENGTH ("height-mm", N_("Height"), house_light.height_m, 0.0, 50.0, 2.4),
  FLAG ("is-on", N_("On"), house_light.is_on, FALSE),
  FLAG ("can-switch-off", N_("Can be switched off"), house_light.can_switch_off, TRUE),
  FLAG ("may-flicker", N_("May flicker"), house_light.may_flicker, FALSE),
  NUMBER ("output-lm", N_("Output"), house_light.output_lm, 0.0, 1e6, 2000.0, 0, "lm"),
  NUMBER ("color-temperature-k", N_("Color temperature"), house_light.color_temperature_k, 1500.0, 20000.0, 3000.0, 0, "K"),
};

static const LrProp lens_rows[] = {
  FINE ("focal-min-mm", N_("Shortest focal length"), lens.focal_min_m, 0.001, 2.0, 0.05),
  FINE ("focal-max-mm", N_("Longest focal length"), lens.focal_max_m, 0.001, 2.0, 0.05),
  NUMBER ("f-number-min", N_("Widest stop"), lens.f_number_min, 0.7, 64.0, 1.8, 2, NULL),
  NUMBER ("f-number-max", N_("Smallest stop"), lens.f_number_max, 0.7, 64.0, 16.0, 2, NULL),
  LENGTH ("nearest-focus-mm", N_("Nearest focus"), lens.nearest_focus_m, 0.01, 20.0, 0.45),
  NUMBER ("converter", N_("Teleconverter"), lens.converter, 0.5, 4.0, 1.0, 3, "×"),
};

static const LrItemKindInfo kinds[LR_N_ITEM_KINDS] = {
  [LR_ITEM_PERSON]      = { "person", "people", N_("Person"), NULL, FALSE, LR_PLACE_FLOOR, TABLE (person_rows) },
  [LR_ITEM_CAMERA]      = { "camera", "cameras", N_("Camera"), "A", FALSE, LR_PLACE_FLOOR, TABLE (camera_rows) },
  [LR_ITEM_LIGHT]       = { "light", "lights", N_("Light"), "L", FALSE, LR_PLACE_FLOOR, TABLE (light_rows) },
  [LR_ITEM_MICROPHONE]  = { "microphone", "microphones", N_("Microphone"), "M", FALSE, LR_PLACE_FLOOR,
                            TABLE (microphone_rows) },
  [LR_ITEM_PANEL]       = { "panel", "panels", N_("Panel"), "R", FALSE, LR_PLACE_FLOOR, TABLE (panel_rows) },
  [LR_ITEM_LEAD]        = { "lead", "leads", N_("Lead"), NULL, FALSE, LR_PLACE_PATH, TABLE (lead_rows) },
  [LR_ITEM_FURNITURE]   = { "furniture", "furniture", N_("Furniture"), NULL, TRUE, LR_PLACE_FLOOR, TABLE (furniture_rows) },
  [LR_ITEM_DOOR]        = { "door", "doors", N_("Door"), NULL, TRUE, LR_PLACE_WALL, TABLE (door_rows) },
  [LR_ITEM_WINDOW]      = { "window", "windows", N_("Window"), NULL, TRUE, LR_PLACE_WALL, TABLE (window_rows) },
  [LR_ITEM_SOCKET]      = { "socket", "sockets", N_("Socket"), "S", TRUE, LR_PLACE_WALL, TABLE (socket_rows) },
  [LR_ITEM_CIRCUIT]     = { "circuit", "circuits", N_("Circuit"), "C", TRUE, LR_PLACE_NONE, TABLE (circuit_rows) },
  [LR_ITEM_NOISE]       = { "noise", "noises", N_("Noise"), NULL, TRUE, LR_PLACE_FLOOR, TABLE (noise_rows) },
  [LR_ITEM_HOUSE_LIGHT] = { "house-light", "house-lights", N_("House light"), NULL, TRUE, LR_PLACE_FLOOR,
                            TABLE (house_light_rows) },
  [LR_ITEM_LENS]        = { "lens", NULL, N_("Lens"), NULL, FALSE, LR_PLACE_NONE, TABLE (lens_rows) },
};

static const LrItemKind order[LR_N_ITEM_KINDS] = {
  LR_ITEM_DOOR, LR_ITEM_WINDOW, LR_ITEM_SOCKET, LR_ITEM_CIRCUIT, LR_ITEM_FURNITURE, LR_ITEM_NOISE, LR_ITEM_HOUSE_LIGHT,
  LR_ITEM_PERSON, LR_ITEM_CAMERA, LR_ITEM_LIGHT, LR_ITEM_MICROPHONE, LR_ITEM_PANEL, LR_ITEM_LEAD, LR_ITEM_LENS,
};

/**
 * lr_item_kind_info:
 * @kind: a kind
 *
 * Returns: (transfer none): its row, with the table of its own members
 */
const LrItemKindInfo *
lr_item_kind_info (LrItemKind kind)
{
  g_return_val_if_fail (kind < LR_N_ITEM_KINDS, NULL);

  return &kinds[kind];
}

/**
 * lr_item_common_table:
 * @place: how the place of an item is given
 *
 * Returns: (transfer none): the members that every item placed so has; a path is not among them, it is a list
 */
const LrPropTable *
lr_item_common_table (LrPlaceType place)
{
  g_return_val_if_fail (place <= LR_PLACE_NONE, NULL);

  return &common_tables[place];
}

/**
 * lr_item_kind_in_order:
 * @index: 0 to %LR_N_ITEM_KINDS - 1
 *
 * The room's kinds come first, then people and gear; lenses, which stand in the kit only, last.
 *
 * Returns: the kind at that place of a set-up's items and of the file's lists
 */
LrItemKind
lr_item_kind_in_order (guint index)
{
  g_return_val_if_fail (index < LR_N_ITEM_KINDS, LR_ITEM_LENS);

  return order[index];
}

/**
 * lr_item_find_prop:
 * @kind: a kind
 * @key: the member's name in the file
 *
 * Returns: (transfer none) (nullable): the row of that member, common or own
 */
const LrProp *
lr_item_find_prop (LrItemKind  kind,
                   const char *key)
{
  const LrItemKindInfo *info = lr_item_kind_info (kind);
  const LrProp *prop;

  g_return_val_if_fail (info != NULL, NULL);

  prop = lr_prop_table_find (&info->table, key);

  return prop != NULL ? prop : lr_prop_table_find (lr_item_common_table (info->place), key);
}
