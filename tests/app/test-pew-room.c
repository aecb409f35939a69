/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Room for the view from the pew: as large as it can be, and clear of the mitre line and of what is drawn. */
#include "pew-room.h"

#include <math.h>

/* A plan from (0, 0), a section from (100, 150): the quarter between them is 150 by 150, the mitre line its falling diagonal. */
static FpBoardLayout
layout_of (void)
{
  FpBoardLayout layout = { .alone = FALSE };

  layout.frame[FP_VIEW_PLAN] = (FpBox) { 0, 0, 100, 150 };
  layout.frame[FP_VIEW_ELEVATION] = (FpBox) { 0, 150, 100, 250 };
  layout.frame[FP_VIEW_SECTION] = (FpBox) { 100, 150, 250, 250 };
  layout.mitre_a = (FpPoint) { 100, 150 };
  layout.mitre_b = (FpPoint) { 250, 0 };
  return layout;
}

static const FpBox SEEN = { -10, -10, 300, 300 };

static void
assert_shape (const FpBox *room)
{
  g_assert_cmpfloat_with_epsilon ((room->x1 - room->x0) / (room->y1 - room->y0 - fp_pew_room_words (room->x1 - room->x0)), FP_PEW_ASPECT, 1e-9);
}

static void
test_beside_the_mitre_line (void)
{
  const FpBoardLayout layout = layout_of ();
  const FpBox quarter = fp_pew_room_quarter (&layout, &SEEN);
  g_autoptr (GArray) covered = fp_pew_room_covered ();
  const FpBox room = fp_pew_room_find (&layout, &quarter, covered);

  g_assert_cmpfloat (quarter.x0, ==, 100);
  g_assert_cmpfloat (quarter.y1, ==, 150);
  g_assert_false (fp_box_is_empty (&room));
  assert_shape (&room);
  g_assert_false (fp_box_is_crossed (&room, layout.mitre_a, layout.mitre_b));
  /* In a right triangle of legs 150 a rectangle w by h has room where w + h is 150: at 4 to 3 and five lines of words, 73.3 wide; less
   * what it keeps away, and not less than one step down from that. */
  g_assert_cmpfloat (room.x1 - room.x0, <=, (150 - fp_pew_room_words (70)) / (1 + 1 / FP_PEW_ASPECT));
  g_assert_cmpfloat (room.x1 - room.x0, >, 0.8 * (150 - fp_pew_room_words (70)) / (1 + 1 / FP_PEW_ASPECT));
  g_assert_cmpfloat (room.x1, ==, quarter.x1); /* the upper one of the two, and as far up and right as it goes */
  g_assert_cmpfloat (room.y1, ==, quarter.y1);
}

/* Words above the line: the room below it is taken. */
static void
test_clear_of_words (void)
{
  const FpBoardLayout layout = layout_of ();
  const FpBox quarter = fp_pew_room_quarter (&layout, &SEEN);
  g_autoptr (GArray) covered = fp_pew_room_covered ();
  g_autoptr (FpDrawing) drawing = fp_drawing_new (300, 300);

  fp_drawing_text (drawing, (FpPoint) { 150, 120 }, 3.5, 0, FP_ALIGN_LEFT, "sees nothing of it, past something else");
  fp_drawing_line (drawing, FP_PEN_GUIDE, layout.mitre_a, layout.mitre_b);
  fp_pew_room_cover (covered, drawing, (FpPoint) { 0, 0 }, 1, &quarter);
  g_assert_cmpuint (covered->len, ==, 1); /* the mitre line is no box */
  const FpBox words = g_array_index (covered, FpBox, 0), room = fp_pew_room_find (&layout, &quarter, covered);
  g_assert_cmpfloat (words.x1, >, 190);
  g_assert_false (fp_box_is_empty (&room));
  assert_shape (&room);
  g_assert_false (fp_box_overlaps (&room, &words));
  g_assert_false (fp_box_is_crossed (&room, layout.mitre_a, layout.mitre_b));
}

static void
test_no_room (void)
{
  FpBoardLayout layout = layout_of ();
  const FpBox narrow = { -10, -10, 150, 300 };
  FpBox quarter = fp_pew_room_quarter (&layout, &SEEN);
  g_autoptr (GArray) covered = fp_pew_room_covered ();
  FpBox room;

  g_array_append_val (covered, quarter);
  room = fp_pew_room_find (&layout, &quarter, covered);
  g_assert_true (fp_box_is_empty (&room));

  /* What is seen of the quarter is too little to see anything in. */
  g_array_set_size (covered, 0);
  quarter = fp_pew_room_quarter (&layout, &narrow);
  g_assert_cmpfloat (quarter.x1, <, 150);
  room = fp_pew_room_find (&layout, &(FpBox) { quarter.x0, quarter.y0, quarter.x0 + 40, quarter.y1 }, covered);
  g_assert_true (fp_box_is_empty (&room));

  layout.alone = TRUE;
  quarter = fp_pew_room_quarter (&layout, &SEEN);
  g_assert_true (fp_box_is_empty (&quarter));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pew-room/beside-the-mitre-line", test_beside_the_mitre_line);
  g_test_add_func ("/pew-room/clear-of-words", test_clear_of_words);
  g_test_add_func ("/pew-room/no-room", test_no_room);
  return g_test_run ();
}
