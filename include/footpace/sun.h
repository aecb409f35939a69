/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun.h - where the sun stands, and through which window it shines
 *
 * Position by the equations of the NOAA solar calculator (a short series of
 * J. Meeus); by its own account good to about a minute of time in latitudes
 * up to 72 degrees (from memory).  Terrain, trees and other buildings are not
 * known, nor is a roof.
 *
 * Degrees throughout.  Nothing here fails, but the reading of a time.
 */
#pragma once

#include "footpace/people.h"

G_BEGIN_DECLS

/* Years that the equations are told for (NOAA, from memory). */
#define FP_SUN_YEAR_FIRST 1901
#define FP_SUN_YEAR_LAST  2099

typedef struct
{
  double declination;
  double right_ascension;  /* -180..180                                     */
  double equation_of_time; /* minutes by which a sundial is before the clock */
  double elevation;        /* of its middle above the horizon, without air  */
  double refraction;       /* by which the air raises it                    */
  double azimuth;          /* of its middle, from true north by way of east: 0..360 */
} FpSun;

/**
 * fp_sun_time_parse:
 * @text: "2026-06-21T09:30+01:00": date, time by the clock, and by how much that is before UTC; "Z" for UTC itself
 * @site: (nullable): by whose clock it is, where it says nothing of UTC
 *
 * Returns: (transfer full): %FP_ERROR_SYNTAX where it is no such time, or says nothing of UTC and there is no known site;
 *   %FP_ERROR_RANGE where the year is one for which the equations are not told; an error of fp_site_time()
 */
GDateTime *fp_sun_time_parse (const char *text, const FpSite *site, GError **error);

/* --- days --------------------------------------------------------------- */

/* Between them lies every height that the sun has at one hour. */
typedef enum { FP_SUN_MARCH, FP_SUN_JUNE, FP_SUN_SEPTEMBER, FP_SUN_DECEMBER, FP_N_SUN_DAYS } FpSunDay;
const char *fp_sun_day_label (FpSunDay self); /* "March equinox", "June solstice" … */
/* When it is that year, by UTC.  @month, @day: (out) */
void        fp_sun_day       (FpSunDay self, int year, guint *month, guint *day);

/* A Mass of the brief, on the day of it that is nearest to the given one.  (transfer full): NULL with an error of
 * fp_site_time(), or %FP_ERROR_RANGE where the year is none for which the equations are told */
GDateTime  *fp_sun_mass_time (const FpBrief *brief, guint mass, int year, guint month, guint day, GError **error);

/* --- in the sky ---------------------------------------------------------- */

/* @latitude: -90..90, north positive.  @longitude: -180..180, east positive. */
FpSun  fp_sun_at     (GDateTime *time, double latitude, double longitude);
/* As it is seen, through the air. */
double fp_sun_height (const FpSun *sun);
/* Towards the sun as it is seen, in church coordinates, of length 1.  @north: as in FpBrief. */
FpVec3 fp_sun_direction (const FpSun *sun, double north);

/* --- in the church ------------------------------------------------------- */

/* Design judgement, degrees: the sun is in somebody's eyes where it stands no farther from where he looks, on the plan, and
 * no higher; a brow keeps off what stands higher. */
#define FP_SUN_ASIDE_MOST  45.0
#define FP_SUN_HEIGHT_MOST 30.0

typedef struct _FpSunlight FpSunlight;

/**
 * fp_sunlight_new:
 * @towards: the sun, from anywhere, as fp_sun_direction() gives it
 *
 * What stands in the way is the building and all that is set up in it.  People shade nobody: whoever sits in front
 * may stay away.  Doors are shut; other openings are taken to be clear glass.
 */
FpSunlight *fp_sunlight_new  (const FpPeople *people, FpVec3 towards);
void        fp_sunlight_free (FpSunlight *self);
/* The sun comes from elsewhere now: cheaper than to begin anew. */
void        fp_sunlight_turn (FpSunlight *self, FpVec3 towards);

/**
 * fp_sunlight_window:
 * @from: a point of the church
 *
 * As no roof is known, the sky is seen only through an opening beyond which no wall follows that rises above its
 * sill: there the next room would be.
 *
 * Returns: index of the placed opening through which the sun shines there; -1: it does not
 */
int         fp_sunlight_window  (const FpSunlight *self, FpVec3 from);

/* The same where it shines into the eyes of somebody in that place, who sits, or stands where there are no seats, and
 * looks towards the altar; straight ahead where there is none.  -1 at the rail, and where it is higher or farther aside. */
int         fp_sunlight_in_eyes (const FpSunlight *self, guint place);

/* The same for a minister of the sanctuary, who looks straight before him; -1 where there is no such. */
int         fp_sunlight_in_minister (const FpSunlight *self, FpOffice office);

/* A ring of light on a floor, or of shade within the one before it.  A shaft of light stands between its corners there and
 * those in the middle of the wall, through which the same rays come. */
typedef struct
{
  guint    opening;  /* index of the placed opening                          */
  gboolean hole;     /* shade within the light                               */
  FpVec3  *floor, *window;
  guint    n;        /* corners of either                                    */
} FpSunPatch;

/* Where the sun shines on floors, past all that stands in the church but pews, which are lit where the floor under them is
 * told to be; on what else stands on a floor it is not told.  The same of rooms and roofs as in fp_sunlight_window().  (transfer full) (element-type FpSunPatch) */
GArray     *fp_sunlight_patches (const FpSunlight *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSunlight, fp_sunlight_free)

G_END_DECLS
