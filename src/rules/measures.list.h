/* SPDX-License-Identifier: GPL-3.0-or-later */
/* measures.list.h - the only list of measures
 *
 * A new measure is a function fp_take_NAME() and a line here:
 *   FP_MEASURE (NAME, id, type, needs sight, label, what it is, why there may be none)
 *   FP_MEASURE_COUNTED (NAME, id, needs sight, one of what, many of what, label, what it is, why there may be none)
 *   FP_MEASURE_OF (NAME, id, unit of the count, label, what it is, why there may be none)
 *   FP_MEASURE_APART (NAME, id, type, label, what it is, why there may be none): of how two things lie to each other
 *   FP_MEASURE_PARAM (id, role, parameter, type, label, what it is, why there may be none): a parameter of a kind, and no
 *   function: the role is written without FP_ROLE_, and each thing of it gives a value
 */
/* altar */
FP_MEASURE (mensa_length, "mensa-length", LENGTH, FALSE, "Length of the altar",
            "Length of the altar's table, from end to end.",
            "there is no altar")
FP_MEASURE (mensa_depth, "mensa-depth", LENGTH, FALSE, "Depth of the altar",
            "Depth of the altar's table, front to back.",
            "there is no altar")
FP_MEASURE (mensa_height, "mensa-height", LENGTH, FALSE, "Height of the altar",
            "Height of the altar's table above what the altar stands on.",
            "there is no altar")
FP_MEASURE (mensa_clear_depth, "mensa-clear-depth", LENGTH, FALSE, "Free depth on the altar",
            "Depth of the altar's table in front of its shelves and tabernacle.",
            "there is no altar")
FP_MEASURE (mensa_before_tabernacle, "mensa-before-tabernacle", LENGTH, FALSE, "Room before the tabernacle",
            "Depth of the altar's table in front of the tabernacle that stands on it.",
            "no tabernacle stands on the altar")
FP_MEASURE (mensa_overhang, "mensa-overhang", LENGTH, FALSE, "Toe room at the altar",
            "How far the altar's table reaches out beyond what carries it.",
            "there is no altar")
FP_MEASURE (mensa_share_of_sanctuary, "mensa-share-of-sanctuary", SHARE, FALSE,
            "Length of the altar against the sanctuary",
            "Length of the altar by the clear width between the walls or piers to both sides of it.",
            "there is no altar")
FP_MEASURE (sanctuary_width, "sanctuary-width", LENGTH, FALSE, "Width of the sanctuary",
            "Clear width between the walls or piers to both sides of the altar.",
            "there is no altar")
FP_MEASURE_APART (altar_freestanding, "altar-freestanding", YES, "Altar apart from the wall",
                  "Whether one can pass behind the altar of celebration, between it and wall or reredos.",
                  "there is no altar")
FP_MEASURE (room_behind_altar, "room-behind-altar", LENGTH, FALSE, "Way behind the altar",
            "Clear distance from a freestanding altar to the next thing behind it, a platform included.",
            "nothing stands behind the altar")
FP_MEASURE_OF (altar_pressure, "altar-pressure", "kN/m2", "Weight of the altar on the floor",
            "Weight of the altar and of what stands on it, of the stone that the works say, by the area on which it stands; "
            "where nobody said what the floor is rated for.",
            "there is no altar, or it was said what the floor is rated for")
FP_MEASURE (altar_on_rating, "altar-on-rating", SHARE, FALSE, "Weight of the altar by the floor’s rating",
            "Weight of the altar and of what stands on it, of the stone that the works say, by the area on which it stands, "
            "against what the works say that the floor is rated for.",
            "there is no altar, or nobody said what the floor is rated for")
FP_MEASURE_COUNTED (altars, "altars", FALSE, "altar", "altars", "Number of altars",
            "How many altars there are.",
            "there is no altar")
/* vessels */
FP_MEASURE (corporal_square, "corporal-square", LENGTH, FALSE, "Room for the corporal",
            "Side of the largest square on the altar's table, in the middle before the celebrant, on which nothing stands.",
            "there is no altar")
FP_MEASURE (room_over_corporal, "room-over-corporal", LENGTH, FALSE, "Height over the altar's table",
            "From the middle of the corporal up to the first thing that hangs or reaches over it.",
            "there is no altar")
FP_MEASURE (tabernacle_width_within, "tabernacle-width-within", LENGTH, FALSE, "Width within the tabernacle",
            "Clear width between the walls of each tabernacle.",
            "there is no tabernacle")
FP_MEASURE (tabernacle_depth_within, "tabernacle-depth-within", LENGTH, FALSE, "Depth within the tabernacle",
            "Clear depth of each tabernacle, from its door to its back.",
            "there is no tabernacle")
FP_MEASURE (tabernacle_height_within, "tabernacle-height-within", LENGTH, FALSE, "Height within the tabernacle",
            "Clear height within each tabernacle.",
            "there is no tabernacle")
FP_MEASURE (tabernacle_door_width, "tabernacle-door-width", LENGTH, FALSE, "Width of the tabernacle's door",
            "Clear width of the door of each tabernacle.",
            "there is no tabernacle")
FP_MEASURE (tabernacle_door_height, "tabernacle-door-height", LENGTH, FALSE, "Height of the tabernacle's door",
            "Clear height of the door of each tabernacle.",
            "there is no tabernacle")
FP_MEASURE (credence_length_left, "credence-length-left", LENGTH, FALSE, "Length left on the credence",
            "Length of the credence less what has to stand on it side by side: what is drawn there, or cruets, basin, finger bowl, "
            "communion paten and, but for low Mass, the chalice.",
            "there is no credence")
FP_MEASURE (credence_depth_left, "credence-depth-left", LENGTH, FALSE, "Depth left on the credence",
            "Depth of the credence less that of the deepest thing that has to stand on it.",
            "there is no credence")
/* steps */
FP_MEASURE_COUNTED (altar_steps, "altar-steps", FALSE, "step", "steps", "Steps of the altar",
            "Number of the altar's steps, the footpace counted as one.",
            "there is no altar")
FP_MEASURE_COUNTED (step_sides, "step-sides", FALSE, "side", "sides", "Sides with steps",
            "Sides of the altar round which its steps pass.",
            "the altar has no footpace")
FP_MEASURE (riser, "riser", LENGTH, FALSE, "Riser of the altar steps",
            "Height of one of the altar's steps.",
            "the altar has no footpace")
FP_MEASURE (tread, "tread", LENGTH, FALSE, "Tread of the altar steps",
            "Depth of one of the altar's steps below the footpace.",
            "the altar has fewer than two steps")
FP_MEASURE (two_risers_and_tread, "two-risers-and-tread", LENGTH, FALSE, "Stride on the altar steps",
            "Twice the riser and the tread together.",
            "the altar has fewer than two steps")
FP_MEASURE (riser_spread, "riser-spread", LENGTH, FALSE, "Evenness of the steps",
            "Difference between the highest and the lowest riser on the way from the nave to the altar.",
            "there is no second flight of steps")
FP_MEASURE (floor_risers, "floor-riser", LENGTH, FALSE, "Riser of the steps between floors",
            "Height of one step of each flight between floors.",
            "there are no steps between floors")
FP_MEASURE (floor_treads, "floor-tread", LENGTH, FALSE, "Tread of the steps between floors",
            "Depth of one step of each flight between floors.",
            "no flight between floors has two steps")
FP_MEASURE (footpace_celebrant, "footpace-celebrant", LENGTH, FALSE, "Footpace where the celebrant stands",
            "Depth of the footpace on the celebrant's side of the altar.",
            "the altar has no footpace")
FP_MEASURE (footpace_ends, "footpace-ends", LENGTH, FALSE, "Footpace beyond the altar's ends",
            "How far the footpace reaches beyond each end of the altar.",
            "the altar has no footpace")
FP_MEASURE (footpace_behind_share, "footpace-behind-share", SHARE, FALSE, "Footpace behind the altar",
            "Depth of the footpace behind the altar by its depth in front.",
            "the altar has no footpace")
FP_MEASURE (step_to_sanctuary_edge, "step-to-sanctuary-edge", LENGTH, FALSE, "Floor before the altar steps",
            "From the lowest step of the altar to where the floor falls towards the nave.",
            "the floor before the altar does not fall towards the nave")
FP_MEASURE (sanctuary_above_nave, "sanctuary-above-nave", LENGTH, FALSE, "Sanctuary above the nave",
            "How far the sanctuary's floor lies above the floor before it.",
            "the floor before the altar does not fall towards the nave")
/* ramps */
FP_MEASURE (ramp_slope, "ramp-slope", SHARE, FALSE, "Slope of the ramp",
            "Slope of the runs of each ramp.",
            "there is no ramp")
FP_MEASURE (ramp_width, "ramp-width", LENGTH, FALSE, "Width of the ramp",
            "Clear width of each ramp between its handrails.",
            "there is no ramp")
FP_MEASURE (ramp_landing, "ramp-landing", LENGTH, FALSE, "Landings of the ramp",
            "Length of the shortest level landing of each ramp.",
            "there is no ramp")
FP_MEASURE (ramp_run, "ramp-run", LENGTH, FALSE, "Rise of the ramp between landings",
            "Rise of the longest run of each ramp from one landing to the next.",
            "there is no ramp")
FP_MEASURE (ramp_handrail, "ramp-handrail", LENGTH, FALSE, "Handrails of the ramp",
            "Height of the handrails of each ramp that rises more than 6 in; 0 where it has none.",
            "there is no ramp that rises more than 6 in")
/* rail */
FP_MEASURE (rail_height, "rail-height", LENGTH, FALSE, "Height of the rail",
            "Height of the communion rail above its floor.",
            "there is no rail before the altar")
FP_MEASURE (rail_top, "rail-top", LENGTH, FALSE, "Width of the rail's top",
            "Width of the top of the communion rail.",
            "there is no rail before the altar")
FP_MEASURE (rail_setback, "rail-setback", LENGTH, FALSE, "Ledge before the rail",
            "From the rail's face towards the people to the edge of the step on which it stands.",
            "there is no rail near the edge of a step")
FP_MEASURE_COUNTED (gates, "gates", FALSE, "gate", "gates", "Gate of the rail",
            "Gates in the rail, or gaps between two rails, before the altar.",
            "there is no rail before the altar")
FP_MEASURE (gate_clear, "gate-clear", LENGTH, FALSE, "Width of the gate",
            "Clear width of the gate in the rail, or of the gap between two rails.",
            "there is no gate before the altar")
FP_MEASURE (gate_off_axis, "gate-off-axis", LENGTH, FALSE, "Place of the gate",
            "How far the middle of the gate lies from the altar's axis.",
            "there is no gate before the altar")
FP_MEASURE (kneeling_width, "kneeling-width", LENGTH, FALSE, "Rail for each communicant",
            "Length of rail for each of those who kneel at it.",
            "there is no rail before the altar")
FP_MEASURE_COUNTED (kneeling_places, "kneeling-places", FALSE, "place", "places", "Places at the rail",
            "How many can kneel at the rail at once.",
            "there is no rail before the altar")
FP_MEASURE (step_to_rail, "step-to-rail", LENGTH, FALSE, "Between altar steps and rail",
            "From the lowest step of the altar to the rail.",
            "there is no rail before the altar")
/* levels */
FP_MEASURE (margin_below, "margin-below", LENGTH, FALSE, "People below the altar",
            "How far the people's highest floor lies below the floor on which the altar stands; galleries apart.",
            "there is no altar, or nobody has a place")
FP_MEASURE_COUNTED (places_not_below, "places-not-below", FALSE, "place", "places", "Places not below the altar",
            "Places whose floor is not below the floor on which the altar stands; galleries apart.",
            "there is no altar, or nobody has a place")
FP_MEASURE (area_not_below, "area-not-below", AREA, FALSE, "Floor not below the altar",
            "Area of the people's floor that is not below the floor on which the altar stands; galleries apart.",
            "there is no altar, or nobody has a place")
FP_MEASURE_COUNTED (places_above_sanctuary, "places-above-sanctuary", FALSE, "place", "places",
            "Places above the sanctuary's floor",
            "Places whose floor is above the floor of the sanctuary; galleries apart.",
            "there is no altar, or nobody has a place")
FP_MEASURE_COUNTED (gallery_places, "gallery-places", FALSE, "place", "places", "Places in galleries",
            "Places in galleries, which are above the altar.",
            "nobody has a place in a gallery")
FP_MEASURE (floor_fall, "floor-fall", SHARE, FALSE, "Fall of the people's floor",
            "Slope of each floor on which people sit, stand or walk.",
            "there is no floor for the people")
FP_MEASURE_COUNTED (steps_lacking_for_rows, "steps-lacking-for-rows", FALSE, "step", "steps",
            "Height of the altar's floor for the rows",
            "Steps of 150 mm by which the altar's floor is lower than a table asks for the number of rows.",
            "there is no altar, or nobody has a place")
/* sight */
FP_MEASURE (mensa_seen, "mensa-seen", SHARE, TRUE, "Altar seen",
            "Share of the places from which at least half of the altar's front edge and of what is held over it is "
            "seen, sitting.",
            "there is no altar, or nobody has a place")
FP_MEASURE (mensa_mean, "mensa-mean", SHARE, TRUE, "How much of the altar is seen",
            "Mean over all places of how much of the altar's front edge and of what is held over it is seen, sitting.",
            "there is no altar, or nobody has a place")
FP_MEASURE_COUNTED (host_unseen, "host-unseen", TRUE, "place", "places", "Raised Host not seen",
            "Places from which nothing is seen of the Host as it is raised, kneeling.",
            "there is no altar, or nobody has a place")
FP_MEASURE (tabernacle_seen, "tabernacle-seen", SHARE, TRUE, "Tabernacle seen",
            "Share of the places from which at least half of the tabernacle is seen, sitting.",
            "there is no tabernacle, or no place from which to see it")
FP_MEASURE (crucifix_seen, "crucifix-seen", SHARE, TRUE, "Crucifix seen",
            "Share of the places from which at least half of the crucifix is seen, sitting.",
            "there is no crucifix, or no place from which to see it")
FP_MEASURE (ambo_seen, "ambo-seen", SHARE, TRUE, "Reader seen",
            "Share of the places from which at least half of the reader's head and shoulders is seen, sitting.",
            "there is no ambo, or no place from which to see it")
FP_MEASURE (chair_seen, "chair-seen", SHARE, TRUE, "Celebrant's chair seen",
            "Share of the places from which at least half of the celebrant is seen as he sits, sitting.",
            "there is no chair, or no place from which to see it")
FP_MEASURE_COUNTED (hidden_by_ambo, "hidden-by-ambo", TRUE, "place", "places", "Altar hidden by the ambo",
            "Places from which less than half of the altar is seen and the ambo hides most of it.",
            "there is no ambo, or no place from which to see it")
FP_MEASURE_COUNTED (hidden_by_candles, "hidden-by-candles", TRUE, "place", "places", "Altar hidden by candlesticks",
            "Places from which less than half of the altar is seen and candlesticks hide most of it.",
            "there are no candlesticks, or no place from which to see the altar")
FP_MEASURE (row_c, "row-c", LENGTH, FALSE, "Sight over the row in front",
            "C-value of each row to the front edge of the altar, sitting.",
            "there is no altar, or nobody has a place")
/* sides and order */
FP_MEASURE_COUNTED (credences, "credences", FALSE, "credence", "credences", "Credence",
            "How many credences there are.",
            "there is no altar")
FP_MEASURE (credence_epistle, "credence-epistle", YES, FALSE, "Side of the credence",
            "Whether a credence stands on the Epistle side.",
            "there is no credence")
FP_MEASURE (credence_area, "credence-area", AREA, FALSE, "Size of the credence",
            "Area of the top of each credence.",
            "there is no credence")
FP_MEASURE_COUNTED (ministers_seats, "ministers-seats", FALSE, "seat", "seats", "Seats of the ministers",
            "Seats of the largest sedilia.",
            "there is no altar")
FP_MEASURE (sedilia_epistle, "sedilia-epistle", YES, FALSE, "Side of the sedilia",
            "Whether sedilia stand on the Epistle side.",
            "there are no sedilia")
FP_MEASURE_COUNTED (ambos, "ambos", FALSE, "ambo", "ambos", "Ambo",
            "How many ambos there are.",
            "there is no altar")
FP_MEASURE (ambo_desk, "ambo-desk", LENGTH, FALSE, "Height of the ambo's desk",
            "Height of the front edge of the desk above the ambo's floor.",
            "there is no ambo")
FP_MEASURE_COUNTED (chairs, "chairs", FALSE, "chair", "chairs", "Celebrant's chair",
            "How many chairs for the celebrant there are.",
            "there is no altar")
FP_MEASURE_COUNTED (crucifixes, "crucifixes", FALSE, "crucifix", "crucifixes", "Crucifix",
            "How many crucifixes there are.",
            "there is no altar")
FP_MEASURE (crucifix_off_middle, "crucifix-off-middle", LENGTH, FALSE, "Place of the crucifix",
            "How far the crucifix stands from the middle of the altar, to either side.",
            "there is no crucifix")
FP_MEASURE (corpus_over_sticks, "corpus-over-sticks", LENGTH, FALSE, "Figure on the crucifix above the candlesticks",
            "How far the foot of the figure is above the top of the highest candlestick on the altar.",
            "no crucifix and candlesticks stand together on the altar")
FP_MEASURE (cross_over_sticks, "cross-over-sticks", LENGTH, FALSE, "Cross above the candlesticks",
            "How far the foot of the cross is above the top of the highest candlestick on the altar.",
            "no crucifix and candlesticks stand together on the altar")
FP_MEASURE_COUNTED (tabernacles, "tabernacles", FALSE, "tabernacle", "tabernacles", "Number of tabernacles",
            "How many tabernacles there are.",
            "there is no altar")
FP_MEASURE (tabernacle_off_middle, "tabernacle-off-middle", LENGTH, FALSE, "Place of the tabernacle",
            "How far a tabernacle on the altar stands from its middle, to either side.",
            "no tabernacle stands on the altar")
FP_MEASURE (tabernacle_on_altar, "tabernacle-on-altar", YES, FALSE, "Tabernacle on the altar",
            "Whether the tabernacle stands on the altar of celebration.",
            "there is no tabernacle")
/* lights */
FP_MEASURE_COUNTED (candles_low, "candles-low", FALSE, "candle", "candles", "Candles at low Mass",
            "Candles on the altar that are lit at low Mass; those that another celebration of the brief needs stay "
            "unlit.",
            "there is no altar")
FP_MEASURE_COUNTED (candles_sung, "candles-sung", FALSE, "candle", "candles", "Candles at sung Mass",
            "Candles on the altar that are lit at sung Mass; those that another celebration of the brief needs stay "
            "unlit.",
            "there is no altar")
FP_MEASURE_COUNTED (candles_solemn, "candles-solemn", FALSE, "candle", "candles", "Candles at solemn Mass",
            "Candles on the altar that are lit at solemn Mass; those that another celebration of the brief needs stay "
            "unlit.",
            "there is no altar")
FP_MEASURE_COUNTED (candles_pontifical, "candles-pontifical", FALSE, "candle", "candles",
            "Candles at the Ordinary's Mass",
            "Candles on the altar that are lit when the Ordinary celebrates.",
            "there is no altar")
FP_MEASURE_COUNTED (candles_requiem, "candles-requiem", FALSE, "candle", "candles", "Candles at a Requiem",
            "Candles on the altar that are lit at a Requiem, as it is set.",
            "there is no altar")
FP_MEASURE_COUNTED (candles_benediction, "candles-benediction", FALSE, "candle", "candles", "Candles at Benediction",
            "Candles on or within 1.5 m of the altar that are lit at Benediction, candelabra too, as it is set.",
            "there is no altar")
FP_MEASURE_COUNTED (candles_newer, "candles-newer", FALSE, "candle", "candles", "Candles on or beside the altar",
            "Candles on the altar or within 1.5 m of it; a seventh that is kept for the bishop is not counted.",
            "there is no altar")
FP_MEASURE_COUNTED (candles_bishop, "candles-bishop", FALSE, "candle", "candles", "Candles when the bishop celebrates",
            "Candles on the altar or within 1.5 m of it.",
            "there is no altar")
FP_MEASURE_COUNTED (cross_away_older, "cross-away-older", FALSE, "celebration", "celebrations", "Masses of the older form without a cross",
            "Masses of the older form that the brief asks for, at which no crucifix stands, as they are set.",
            "there is no crucifix, or the brief asks for no such Mass")
FP_MEASURE_COUNTED (cross_away_newer, "cross-away-newer", FALSE, "celebration", "celebrations", "Masses of the newer form without a cross",
            "Masses of the newer form that the brief asks for, at which no crucifix stands, as they are set.",
            "there is no crucifix, or the brief asks for no such Mass")
FP_MEASURE_COUNTED (cards_away, "cards-away", FALSE, "celebration", "celebrations", "Masses without altar cards",
            "Masses of the older form that the brief asks for, at which the altar cards that there are do not stand.",
            "there are no altar cards, or the brief asks for no Mass of the older form")
FP_MEASURE_COUNTED (lamp_out, "lamp-out", FALSE, "celebration", "celebrations", "Celebrations without a burning lamp",
            "Celebrations that the brief asks for, but Good Friday, at which no sanctuary lamp burns, as they are set.",
            "there is no sanctuary lamp")
FP_MEASURE (candle_spacing, "candle-spacing", LENGTH, FALSE, "Distance between candles",
            "Least distance between the middles of two candles.",
            "there are not two candles")
FP_MEASURE_APART (flame_clear, "flame-clear", LENGTH, "Flame and what can burn",
                  "Least distance on the level from a flame to a furnishing that rises as high, of whatever it is made; "
                  "walls, candlesticks and crucifix left out.",
                  "there is no flame, or no furnishing rises to one")
/* room */
FP_MEASURE_APART (overlap, "overlap", LENGTH, "Two things in one place",
                  "The least way by which one of two things that run into each other would have to be moved to be clear "
                  "of the other; floors, and a thing and what it stands on, left out.",
                  "there are no furnishings")
FP_MEASURE (in_doorway, "in-doorway", LENGTH, FALSE, "Things in the way through a door",
            "How far a thing reaches into the way through a door: as wide as the door, through the wall and 900 mm "
            "beyond either face of it. Openings wider than 3 m are no doors; steps and gates are left out.",
            "there are no doors")
/* ways out */
FP_MEASURE (way_out_clear, "way-out-clear", LENGTH, TRUE, "Width of a way out",
            "Clear width of each door that opens on a floor of the people and on no other floor that is drawn, between its jambs.",
            "no door leads out from the people's floor")
FP_MEASURE_COUNTED (ways_out_lacking_us, "ways-out-lacking-us", TRUE, "way out", "ways out", "Ways out that are lacking, United States",
            "How many ways out there are fewer than are wanted for all who sit or have room to stand: 1 for up to 49, 2 to 500, 3 to "
            "1000, 4 for more.",
            "nobody has a place, or no door leads out from the people's floor")
FP_MEASURE (ways_out_width_us, "ways-out-width-us", LENGTH, TRUE, "Width of ways out that is lacking, United States",
            "By how much all ways out together are narrower than 0.2 in for each person, 0.15 in with sprinklers.",
            "nobody has a place, or no door leads out from the people's floor")
FP_MEASURE (ways_out_loss_us, "ways-out-loss-us", LENGTH, TRUE, "Width that is lacking when the widest way out is lost, United States",
            "By how much all ways out but the widest are narrower than half of what is wanted of all.",
            "there is one way out, no more is wanted, or nobody has a place")
FP_MEASURE (ways_out_main_us, "ways-out-main-us", LENGTH, TRUE, "Width of the main way out that is lacking, United States",
            "By how much the widest way out is narrower than what is wanted for half of all people, where there are more than 300.",
            "no more than 300 people have a place, or no door leads out from the people's floor")
FP_MEASURE (ways_out_apart_us, "ways-out-apart-us", LENGTH, TRUE, "Distance of ways out that is lacking, United States",
            "By how much the two ways out that lie farthest apart lie nearer to each other than half the diagonal of the people's "
            "floors, a third with sprinklers; from middle to middle.",
            "there is one way out, no more is wanted, or nobody has a place")
FP_MEASURE_COUNTED (ways_out_lacking_uk, "ways-out-lacking-uk", TRUE, "way out", "ways out", "Ways out that are lacking, United Kingdom",
            "How many ways out there are fewer than are wanted for all who sit or have room to stand: 1 for up to 60, 2 to 600, 3 for "
            "more.",
            "nobody has a place, or no door leads out from the people's floor")
FP_MEASURE_COUNTED (ways_out_hold_uk, "ways-out-hold-uk", TRUE, "person", "people", "People for whom there is no way out, United Kingdom",
            "How many more people there are than leave by all ways out but the widest: 60 by 750 mm, 110 by 850, 220 by 1050, by a wider "
            "one a person for each 5 mm of its width.",
            "nobody has a place, or no door leads out from the people's floor")
/* room to move */
FP_MEASURE (way_from_sacristy, "way-from-sacristy", LENGTH, TRUE, "Way from the sacristy to the altar",
            "Width of the widest body that gets from a door to the sanctuary to where the celebrant stands at the altar, where it "
            "is narrowest.",
            "no door opens on the floor of the ministers")
FP_MEASURE (way_round_altar, "way-round-altar", LENGTH, TRUE, "Way round the altar",
            "Width of the widest body that gets all the way round a freestanding altar, where it is narrowest.",
            "no altar stands free")
FP_MEASURE (way_from_credence, "way-from-credence", LENGTH, TRUE, "Way from the credence to the altar",
            "Width of the widest body that gets from the credence to the Epistle side of the altar without crossing before its "
            "middle.",
            "there is no altar, or no credence")
FP_MEASURE (way_from_sedilia, "way-from-sedilia", LENGTH, TRUE, "Way from the bench to the altar",
            "Width of the widest body that gets from the bench of the ministers to the Epistle side of the altar without crossing "
            "before its middle.",
            "there is no altar, or no bench")
FP_MEASURE (way_through_nave, "way-through-nave", LENGTH, TRUE, "Way through the nave",
            "Width of the widest body that gets from the widest door to the head of the nave, where it is narrowest.",
            "no door opens on the people's floor, or there is no altar")
FP_MEASURE (way_of_procession, "way-of-procession", LENGTH, TRUE, "Way of a procession",
            "Width of the widest body that gets from the widest door of the people to the foot of the altar, where it is narrowest.",
            "no door opens on the people's floor, or there is no altar")
FP_MEASURE (way_on_wheels, "way-on-wheels", LENGTH, TRUE, "Way without a step to the head of the nave",
            "Width of the widest body that gets from a door to the head of the nave without a step, by the best of the doors, their "
            "own width included.",
            "no door opens on the people's floor, or there is no altar")
FP_MEASURE (turning_circle, "turning-circle", LENGTH, TRUE, "Turning circle at the head of the nave",
            "Diameter of the largest circle of floor without a step that is free within 3 m of the head of the nave.",
            "there is no altar, or no floor of the people before it")
FP_MEASURE (genuflect_footpace, "genuflect-footpace", LENGTH, TRUE, "Free depth of the footpace",
            "How far the footpace is free where the celebrant stands, 600 mm wide, before its edge or what stands on it.",
            "the altar stands on no footpace")
FP_MEASURE (genuflect_floor, "genuflect-floor", LENGTH, TRUE, "Free floor before the altar steps",
            "How far the floor is free and level before the lowest step of the altar, 600 mm wide.",
            "the altar stands on no footpace")
FP_MEASURE_COUNTED (ministers_in_line, "ministers-in-line", TRUE, "place", "places", "Places for ministers in line",
            "How many of three ministers find a level of their own one behind the other before the altar, 600 mm wide and 280 mm deep: "
            "the footpace, the steps, and the floor.",
            "the altar stands on no footpace")
FP_MEASURE (behind_ministers, "behind-ministers", LENGTH, TRUE, "Way behind ministers in line",
            "From the back of the last of three ministers who stand one behind the other before the altar, one to a level, to the next "
            "thing or the end of the floor.",
            "no three ministers find places in line")
FP_MEASURE (past_celebrant, "past-celebrant", LENGTH, TRUE, "Way past the celebrant on the footpace",
            "Width of the widest body that gets along the footpace behind who stands at the middle of the altar, an ellipse of 610 by "
            "457 mm, and reaches over no edge of it.",
            "the altar stands on no footpace")
FP_MEASURE (past_on_step, "past-on-step", LENGTH, TRUE, "Way past a minister on a step",
            "Width of the widest body that gets along a step of the altar, or over what is lower, behind who stands on the middle of it, "
            "an ellipse of 610 by 457 mm.",
            "the altar has no step below the footpace on which one stands")
FP_MEASURE (way_to_pews, "way-to-pews", LENGTH, TRUE, "Way from the rail to the pews",
            "Width of the widest body that gets from behind those who kneel at the rail to the last row of each block of seats, by the "
            "better end of it, where it is narrowest.",
            "there is no rail, or there are no seats")
FP_MEASURE (bier_turning, "bier-turning", LENGTH, TRUE, "Widest bier that gets to the head of the nave",
            "Width of the widest rectangle 2.2 m long that gets in by the widest door and to the head of the nave, turned as it "
            "must be.",
            "no door opens on the people's floor, or there is no altar")
FP_MEASURE (behind_communicants, "behind-communicants", LENGTH, TRUE, "Free floor before the rail",
            "From the face of the rail, at each place where somebody kneels, back to the next thing or to the end of the floor.",
            "nobody kneels at a rail")
FP_MEASURE (gate_swing, "gate-swing", LENGTH, TRUE, "What a gate strikes",
            "How far a thing or a rising step reaches into the quarter of a circle in which a leaf of the gate opens towards the altar.",
            "no straight rail has a gate")
FP_MEASURE (door_swing, "door-swing", LENGTH, TRUE, "What a door strikes",
            "How far a thing, a step up or down, or another door reaches into the quarter of a circle in which a leaf of a door opens.",
            "no door has a leaf")
FP_MEASURE (tabernacle_swing, "tabernacle-swing", LENGTH, TRUE, "What the door of the tabernacle strikes",
            "How far a thing that stands before the tabernacle reaches into the quarter of a circle in which its door opens, hung on the "
            "better side; cards, cloths and veils are left out.",
            "there is no tabernacle")
/* people */
FP_MEASURE (seats_share, "seats-share", SHARE, FALSE, "Seats",
            "Seats that there are by the number that the brief wants.",
            "the brief does not say how many seats are wanted")
FP_MEASURE (row_spacing, "row-spacing", LENGTH, FALSE, "Distance between rows",
            "From one row to the next, back to back.",
            "there are no two rows of seats")
FP_MEASURE (row_clear, "row-clear", LENGTH, FALSE, "Way between rows",
            "Clear width between one row and the next, kneelers up.",
            "there are no two rows of seats")
FP_MEASURE (seat_width, "seat-width", LENGTH, FALSE, "Width of a seat",
            "Length of bench for each person.",
            "there are no seats")
FP_MEASURE_COUNTED (row_seats, "row-seats", FALSE, "seat", "seats", "Seats in a row",
            "Seats of the longest row of each block of pews.",
            "there are no seats")
FP_MEASURE (farthest_place, "farthest-place", LENGTH, FALSE, "Farthest place",
            "From the altar to the place farthest from it, on the plan; galleries apart.",
            "there is no altar, or nobody has a place")
FP_MEASURE (row_clear_lacking, "row-clear-lacking", LENGTH, FALSE, "What long rows lack between them",
            "By how much the way between two rows is less than 12 in, and 0.3 in more for each seat of a row over 14, 22 in at most; "
            "kneelers up.",
            "there are no two rows of seats")
FP_MEASURE (pew_area, "pew-area", AREA, FALSE, "Ground for each seat",
            "Area of a block of pews, its ways left out, by its seats.",
            "there are no pews")
FP_MEASURE (nave_to_pews, "nave-to-pews", SHARE, FALSE, "Nave against its pews",
            "Area of the people's floors by the area of the pews on them.",
            "there are no pews, or no floor of the people")
FP_MEASURE (sanctuary_of_nave, "sanctuary-of-nave", SHARE, FALSE, "Length of the sanctuary against the nave",
            "From west to east, the ministers' floors by the people's.",
            "there is no floor of the ministers, or none of the people")
FP_MEASURE_PARAM ("pew-seat-height", PEWS, "seat-height", LENGTH, "Height of the seats",
                  "From the floor to the seat of a pew.",
                  "there are no pews")
FP_MEASURE (places_turned, "places-turned", SHARE, FALSE, "Places that face away from the altar",
            "Places from which the altar lies more than 30° to one side of straight ahead; galleries apart.",
            "there is no altar, or nobody has a place")
FP_MEASURE_OF (look_up, "look-up", "deg", "Look up to the cross",
               "Steepest look of those who sit up to the top of the crucifix, from the level; galleries apart.",
               "there is no crucifix, or nobody sits")
/* access */
FP_MEASURE_PARAM ("handrail-height", HANDRAIL, "height", LENGTH, "Height of a handrail",
                  "Height of a handrail above the line of the steps' edges, or above the ramp.", "there is no handrail")
FP_MEASURE_PARAM ("handrail-beyond", HANDRAIL, "extend", LENGTH, "Handrail beyond the steps",
                  "By how much a handrail goes on level beyond each end of the steps.", "there is no handrail")
FP_MEASURE_COUNTED (wheelchair_lacking, "wheelchair-lacking", FALSE, "place", "places", "Places for wheelchairs that are lacking",
                    "By how many places for wheelchairs there are fewer than the table has for so many seats.",
                    "there are no seats")
FP_MEASURE_COUNTED (wheelchair_alone, "wheelchair-alone", FALSE, "place", "places", "Places for wheelchairs without a companion",
                    "Places for wheelchairs that have no seat beside them that no other has: within 1200 mm to the side and 500 mm "
                    "before or behind.",
                    "there is no place for a wheelchair")
FP_MEASURE (wheelchair_width, "wheelchair-width", LENGTH, FALSE, "Width of a place for a wheelchair",
            "Width of a place for a wheelchair that has none beside it.", "there is no single place for a wheelchair")
FP_MEASURE (wheelchair_beside, "wheelchair-beside", LENGTH, FALSE, "Width of places for wheelchairs side by side",
            "Width of each of several places for wheelchairs side by side.",
            "there are no places for wheelchairs side by side")
FP_MEASURE_PARAM ("wheelchair-depth", WHEELCHAIR, "depth", LENGTH, "Depth of a place for a wheelchair",
                  "Depth of a place for a wheelchair.", "there is no place for a wheelchair")
FP_MEASURE_PARAM ("screen-gate", SCREEN, "gate", LENGTH, "Way through the screen",
                  "Clear width of the opening in the middle of a screen.", "there is no screen")
/* flights and falls */
FP_MEASURE_COUNTED (floor_flight, "floor-flight", FALSE, "riser", "risers", "Risers of a flight between floors",
                    "How many risers a flight of steps between two floors has.", "there are no steps between floors")
FP_MEASURE (short_flight_tread, "short-flight-tread", LENGTH, FALSE, "Tread of a flight of two risers",
            "Depth of the tread of a flight between floors that has two risers.", "there is no flight of two risers between floors")
FP_MEASURE (footpace_fall, "footpace-fall", LENGTH, FALSE, "Fall from the footpace",
            "Height of the footpace on a side where no steps are and one may fall.",
            "there are steps, or a wall, on all sides of the footpace")
FP_MEASURE_COUNTED (flight_handrails, "flight-handrails", FALSE, "side", "sides", "Sides of a flight with a handrail",
                    "On how many of its two sides a flight of three risers or more between floors has a handrail all along.",
                    "no flight between floors has three risers")
FP_MEASURE (flight_beyond_reach, "flight-beyond-reach", LENGTH, FALSE, "Part of a flight beyond the reach of a handrail",
            "Widest part of the width of a flight of three risers or more between floors that lies farther than 30 in from every "
            "handrail.",
            "no flight between floors has three risers")
FP_MEASURE_COUNTED (short_flight_handrails, "short-flight-handrails", FALSE, "handrail", "handrails",
                    "Handrails of a flight of one or two risers",
                    "How many handrails go along a flight of one or two risers between floors, at its sides or between them.",
                    "there is no flight of one or two risers between floors")
FP_MEASURE (flight_channel, "flight-channel", LENGTH, FALSE, "Width between the handrails of a flight",
            "From one handrail to the next across a flight between floors, where it is most.",
            "no flight between floors has two handrails")
FP_MEASURE (flight_edge_tread, "flight-edge-tread", LENGTH, FALSE, "Marking on the treads of the steps between floors",
            "How wide the edge of each step between floors is marked in contrast, on the tread.",
            "there are no steps between floors")
FP_MEASURE (flight_edge_riser, "flight-edge-riser", LENGTH, FALSE, "Marking on the risers of the steps between floors",
            "How high the edge of each step between floors is marked in contrast, on the riser.",
            "there are no steps between floors")
FP_MEASURE (flight_edge_contrast, "flight-edge-contrast", SHARE, FALSE, "Contrast of the edges of the steps between floors",
            "By how much more or less light the marking of the edges reflects than the treads, between floors.",
            "there are no steps between floors")
FP_MEASURE (altar_edge_tread, "altar-edge-tread", LENGTH, FALSE, "Marking on the treads of the altar steps",
            "How wide the edge of each of the altar's steps is marked in contrast, on the tread.",
            "the altar has no footpace")
FP_MEASURE (altar_edge_contrast, "altar-edge-contrast", SHARE, FALSE, "Contrast of the edges of the altar steps",
            "By how much more or less light the marking of the edges reflects than the treads of the altar's steps.",
            "the altar has no footpace")
/* cloths, credence, ornaments */
FP_MEASURE_COUNTED (cloths, "cloths", FALSE, "cloth", "cloths", "Cloths on the altar",
                    "How many cloths lie on the altar, the cere cloth not counted.", "no cloths lie on the altar")
FP_MEASURE_PARAM ("cloth-clear", ALTAR_CLOTHS, "clear", LENGTH, "Ends of the top cloth above the footpace",
                  "From the hem at the ends of the altar down to the footpace.", "no cloths lie on the altar")
FP_MEASURE (cloth_drop, "cloth-drop", LENGTH, FALSE, "Fall of the top cloth at the ends",
            "From the mensa down to the hem at the ends of the altar.", "no cloths lie on the altar")
FP_MEASURE_PARAM ("cloth-front", ALTAR_CLOTHS, "front", LENGTH, "Fall of the top cloth in front",
                  "From the mensa down to the hem in front.", "no cloths lie on the altar")
FP_MEASURE (canopy_short, "canopy-short", LENGTH, FALSE, "What the canopy leaves uncovered",
            "By how much altar and footpace reach out from under the canopy.", "there is no canopy, or no altar")
FP_MEASURE_PARAM ("gradine-height", GRADINE, "height", LENGTH, "Height of a gradine", "Height of a shelf behind the mensa.", "there is no gradine")
FP_MEASURE_PARAM ("credence-length", CREDENCE, "length", LENGTH, "Length of the credence", "Length of the credence's top.", "there is no credence")
FP_MEASURE_PARAM ("credence-height", CREDENCE, "height", LENGTH, "Height of the credence", "Height of the credence's top.", "there is no credence")
FP_MEASURE_COUNTED (ornaments_on_credence, "ornaments-on-credence", FALSE, "ornament", "ornaments", "Ornaments on the credence",
                    "Flowers, crosses, statues and reliquaries that stand on a credence.", "there is no credence")
FP_MEASURE_COUNTED (flowers_on_altar, "flowers-on-altar", FALSE, "row of vases", "rows of vases", "Flowers on the altar",
                    "Rows of vases that stand on the mensa itself.", "there is no altar")
FP_MEASURE (bell_epistle, "bell-epistle", YES, FALSE, "Bell on the Epistle side", "Whether a hand bell stands on the Epistle side.", "there is no hand bell")
FP_MEASURE (sanctus_epistle, "sanctus-epistle", YES, FALSE, "Sanctus candle on the Epistle side",
            "Whether the Sanctus candle stands on the Epistle side.", "there is no Sanctus candle")
FP_MEASURE (chair_faces, "chair-faces", YES, FALSE, "Chair turned to the people",
            "Whether the celebrant's chair looks towards the people, be it askance.", "there is no chair")
FP_MEASURE (side_altar_length, "side-altar-length", LENGTH, FALSE, "Length of a side altar",
            "Length of an altar beside the one of celebration.", "there is no second altar")
FP_MEASURE_COUNTED (side_altar_steps, "side-altar-steps", FALSE, "step", "steps", "Steps of a side altar",
                    "Number of steps of an altar beside the one of celebration, the footpace counted as one.", "there is no second altar")
/* pulpit, font, lamps, candles */
FP_MEASURE_PARAM ("pulpit-parapet", PULPIT, "parapet", LENGTH, "Parapet of the pulpit", "From the pulpit's floor to the top of its side.", "there is no pulpit")
FP_MEASURE_PARAM ("pulpit-top", PULPIT, "top", LENGTH, "Top of the pulpit's side", "Breadth of the top of the pulpit's side.", "there is no pulpit")
FP_MEASURE_PARAM ("pulpit-riser", PULPIT, "riser", LENGTH, "Riser of the pulpit's stair", "Height of a step of the pulpit's stair, at most.", "there is no pulpit")
FP_MEASURE_PARAM ("pulpit-tread", PULPIT, "tread", LENGTH, "Tread of the pulpit's stair", "Depth of a step of the pulpit's stair.", "there is no pulpit")
FP_MEASURE_PARAM ("font-riser", FONT, "riser", LENGTH, "Riser of the font's steps", "Height of one of the font's steps.", "there is no font")
FP_MEASURE_PARAM ("font-tread", FONT, "tread", LENGTH, "Tread of the font's steps", "Depth of one of the font's steps.", "there is no font")
FP_MEASURE_COUNTED (lamps, "lamps", FALSE, "lamp", "lamps", "Sanctuary lamps", "How many sanctuary lamps there are.", "there is no sanctuary lamp")
FP_MEASURE_PARAM ("lamp-underside", SANCTUARY_LAMP, "underside", LENGTH, "Sanctuary lamp above the floor",
                  "From the floor to the underside of the lamp.", "there is no sanctuary lamp")
FP_MEASURE_PARAM ("candle-length", CANDLES, "candle", LENGTH, "Length of the candles", "How much of a candle stands above its stick.", "there are no candles")
FP_MEASURE_PARAM ("paschal-height", PASCHAL_CANDLE, "height", LENGTH, "Height of the paschal candlestick", "Height of the paschal candlestick.", "there is no paschal candlestick")
FP_MEASURE_PARAM ("paschal-diameter", PASCHAL_CANDLE, "diameter", LENGTH, "Thickness of the paschal candle", "Diameter of the paschal candle.", "there is no paschal candlestick")
FP_MEASURE_PARAM ("rail-cushion", RAIL, "cushion", LENGTH, "Cushion at the rail", "Thickness of the kneeling cushion at the rail.", "there is no rail")
