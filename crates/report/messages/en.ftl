# What Tussock says, in English. Identifiers with underscores are codes of findings (tussock_types::Said), those with hyphens are
# labels and sentences of the windows. A number carries its unit in its name and is written with it: $width_m is "1.2 m",
# $share_ratio is "31 %", $lost_min is "25 min", $towards_deg is "north-east". Counts have no unit and choose the plural.
# A value without a unit in its name that is no count comes written already: $area is "12.3 m²", $hours is "4.5 h", $percent is "31 %".
# What stands in square brackets before a text chooses it and is not translated: it is a number, a plural category, or a word of ours
# such as [none], which is what a value is that is not there.

## What the positions of a log can show, or the one thing to change

positions_right = Positions are right to about { $error_m }.
positions_off = Positions are off by about { $error_m }: mount the antenna higher, with a clear view of the sky, or log with an RTK receiver.
receiver_jumps = The receiver jumped and stayed off: positions from before and after the jump do not match. Find out what blocks its view of the sky, or give the log from before and after the jump as separate files.
error_not_shown = This log does not show how far its positions are off: let the machine stand for ten minutes with the logger running.
fixes_too_rare = One fix every { $period_s } leaves turns unseen: log one every second.
digits_too_coarse = Positions are logged in steps of { $step_m }: let the logger write more digits (seven decimals of a degree, five of a minute).

## Why a log shows nothing of a lawn

mostly_jumps = { $jumps } of { $fixes } fixes lie farther from the one before than a mower can drive in that time (positions.max_speed_mps is { $max_speed_mps }): this is a vehicle, or positions that jump.
too_few_fixes = { $used } of { $fixes } { $fixes ->
    [one] fix
   *[other] fixes
} can be used, too few to show a drive: let the logger run for a whole outing.
not_one_garden = The positions extend over { $extent_m }: this is not the log of one garden, or jumps hide it. Give the files of one garden only.
fixes_far_too_rare = One fix every { $period_s } shows nothing of a lawn: log one every second.
walking_pace = It moves at { $speed_mps }, as fast as people walk: give a log of the machine at work, or state its speed if it really is that fast (machine.speed_mps).
walk_round = This looks like a walk round { $area_m2 } of garden ({ $length_m } at { $speed_mps }), not like the log of a mower: make a plan of it with tussock plan from-walk FILE{ $gpx ->
    [yes] { "" }
   *[other] , once it is saved as GPX
}. If it is the mower after all, state its speed (machine.speed_mps).

## From where a tape is laid

landmark_station = the station
landmark_middle = the middle of “{ $body }”
landmark_corner_at = the corner of { $body ->
    [none] the lawn
   *[other] “{ $body }”
} at { $beside ->
    [none] the station
   *[other] “{ $beside }”
}
landmark_corner_nearest = the corner of { $body ->
    [none] the lawn
   *[other] “{ $body }”
} nearest the station
landmark_corner = the{ $outermost ->
    [yes] { " " }outermost
   *[other] { "" }
} corner of { $body ->
    [none] the lawn
   *[other] “{ $body }”
} in the { $wind_deg }
landmark_corner_apart = the corner of { $body ->
    [none] the lawn
   *[other] “{ $body }”
} in the { $wind_deg } that is { $farther ->
    [yes] farther from
   *[other] nearer to
} { $beside ->
    [none] the station
   *[other] “{ $beside }”
}

## What the reader of a log did or noticed

time_without_zone = The times do not state their zone and are taken as UTC.
time_is_relative = The times count from a start of the logger's own and carry no date.
gps_time = The times are GPS time and were taken back to UTC, by 18 leap seconds since 2017 (IERS, Bulletin C).
week_rollover_repaired = { $fixes ->
    [one] 1 fix was
   *[other] { $fixes } fixes were
} dated 1024 weeks too early (GPS week rollover) and moved forward by { $days } days; the first is now on { $date }.
late_fixes = { $fixes ->
    [one] 1 fix was written later than its time and was put where it belongs.
   *[other] { $fixes } fixes were written later than their time and were put where they belong.
}
newest_first = The log has its newest fix first and was turned round.
block_out_of_order = A part of the log was written later than its time.
tracks_overlap = Tracks overlap in time; their fixes were put in one order, and nothing is joined across.
times_do_not_fit = A track has { $times } times and { $positions } positions, and nobody can say which belong together; it was left out.
constant_quality = GGA calls every fix { $manual ->
    [yes] manual (7)
   *[other] simulated (8)
} where RMC says that it is valid; the kind of fix was taken from RMC.
several_machines = The log holds { $machines } machines, told apart by their places at the same times.
same_log_twice = The same content as { $log }, read once.
overlaps_another_log = { $fixes ->
    [one] 1 fix
   *[other] { $fixes } fixes
} from { $date } on left out, at times that another log of this machine covers.
file_not_closed = The file is not closed at its end, as if the logger had been switched off.
file_damaged = The compressed file is damaged, its end is missing: { $fault }
line_too_long = A line of { $bytes } bytes is longer than { $limit }, the limit set by limits.line_bytes, and was passed over.
line_cut = A line of more than { $bytes } bytes is longer than { $limit }, the limit set by limits.line_bytes, and was passed over.
attribute_too_long = An attribute of { $bytes } bytes is longer than { $limit }, the limit set by limits.attribute_bytes, and was passed over.
document_type_ignored = The document type is ignored, and no entity that it defines is replaced.

## What the reader of a walk did or noticed

walk_markup_broken = The file is damaged at { $places ->
    [one] 1 place, which was
   *[other] { $places } places, which were
} passed over; look whether anything is missing in the plan.
walk_taken_as_lawn = "{ $track }" (closed, { $area_m2 }, { $length_m } round) is taken as the lawn: it is the only track that comes back to where it began. If it is something else, say so with --role "{ $track }=ROLE".
walk_positions_skipped = { $positions ->
    [one] 1 position
   *[other] { $positions } positions
} of "{ $track }" without usable latitude and longitude.
walk_name_unknown = "{ $track }" is left out, its name says nothing of what it is.{ $seems ->
    [none] { "" }
   *[other] { " " }If it is what it looks like, --role "{ $track }={ $seems }" takes it as that.
}
walk_spikes_cut = { $positions ->
    [one] 1 position of "{ $track }" jumps away and back; it is left out.
   *[other] { $positions } positions of "{ $track }" jump away and back; they are left out.
}
walk_waits_as_corners = In "{ $track }" the walker stood still at { $places ->
    [one] 1 place; it is kept as a corner.
   *[other] { $places } places; each is kept as a corner.
}
walk_pieces_joined = "{ $track }" was recorded in { $pieces } pieces, joined by straight lines.
walk_overlap_cut = "{ $track }" was walked { $past_m } past its start; that end is cut off.
walk_gap_closed = "{ $track }" was closed by a straight line of { $gap_m }.
walk_loops_cut = { $loops ->
    [one] 1 small loop in "{ $track }" is cut off.
   *[other] { $loops } small loops in "{ $track }" are cut off.
}
walk_guide_turned = "{ $track }" was walked towards the station; it is turned round.

## What else stands against a log

stood_all_the_time = The machine stood the whole time: let the logger run for several whole outings.
drove_too_short = Only { $driven_s } of driving were logged: let the logger run for several whole outings.
drove_too_short_by = { $driven_s } of driving were logged: about { $missing_h } more are needed before a bare patch { $wanted_m } wide is more than bad luck.
receiver_jumped = The receiver jumped by { $size_m } at { $time } and stayed there.
receiver_jumps_back = The receiver jumped off and back { $jumps } times: over a part of the lawn its sky is poor.
stops_not_placed = Stops of { $lost_min } in all are not told: positions this poor do not show where the mower stood.
receiver_jumped_often = { $jumps ->
    [one] And one more jump of that kind.
   *[other] And { $jumps } more jumps of that kind.
}
date_too_old = The log begins on { $date }: the logger's clock was not set, or its week counter rolled over. Its dates are wrong; its times of day may be right (--date sets the day of logs that hold times only).
positions_bent = On about { $area_m2 } around { $place }, positions are always off in the same direction, by up to { $largest_m }, as beside a wall or under trees. The path was straightened there; how much of that ground was visited is less certain.
turns_not_at_edge = The turns do not lie along the edges of the plan (lanes, or a plan that does not fit), so the edges were not used to correct the positions.
edge_inside = At the { $edge_deg } edge the mower turns { $offset_m } further in than at the other edges ({ $turns } turns): the edge is drawn too far out, the boundary lies too far in, or the receiver is off there. Measure on the lawn before you move anything.
edge_outside = At the { $edge_deg } edge the mower turns { $offset_m } further out than at the other edges ({ $turns } turns): the edge is drawn too far in, the boundary lies too far out, or the receiver is off there. Measure on the lawn before you move anything.
zone_driven = The zone{ $zone ->
    [none] { "" }
   *[other] { " " }"{ $zone }"
} is driven over as the lawn is ({ $path_m } of path in it): it does not exist for the mower. What lies there may not be safe from it.
plan_beside = The plan is offset from the log by { $distance_m } ({ $east_m } east, { $north_m } north); it was moved to match the log.
drift_assumed = The log does not say how good its positions are, and the machine never stands long enough to show it; { $drift_m } is assumed. If you know better, say so (positions.drift_m).
drift_at_most = The machine never stands long enough to show how far positions wander; its straight drives allow { $drift_m } at most.
silent_long = For { $silent_fraction } of the time there are no usable fixes; nothing is claimed about it.
fixes_left_out = { $poor ->
    [0] { $jumps ->
        [one] 1 fix was left out as a jump.
       *[other] { $jumps } fixes were left out as jumps.
    }
    [one] { $jumps ->
        [0] 1 fix was left out for poor quality.
        [one] 1 fix was left out for poor quality and 1 as a jump.
       *[other] 1 fix was left out for poor quality and { $jumps } as jumps.
    }
   *[other] { $jumps ->
        [0] { $poor } fixes were left out for poor quality.
        [one] { $poor } fixes were left out for poor quality and 1 as a jump.
       *[other] { $poor } fixes were left out for poor quality and { $jumps } as jumps.
    }
}
no_station = No charging station was recognised: rests of ten minutes or more do not recur in one place.
claim_too_good = The receiver claims { $claimed_m }, but its positions scatter by { $scatter_m }: the scatter is believed, not the claim.
rtk_fixed_too_good = The receiver calls its fixes RTK fixed, which means about { $usual_m }, but its positions scatter by { $scatter_m }: the scatter is believed, not the claim.
positions_repeated = { $repeated_fraction } of the fixes repeat the position before them to the last digit while the receiver reports a speed (for { $longest_s } at the longest): it hands out old positions.
positions_held = { $repeated_fraction } of the fixes repeat the position before them to the last digit (for { $longest_s } at the longest): the receiver holds its position while it stands, so rests look better than its positions are. Switch static hold off.
drives_at_rest = { $rest_min } of { $driven_min } of driving fall in hours when the settings let the machine rest ({ $time_zone ->
    [none] no time zone is set, so UTC
   *[other] time zone { $time_zone }
}); no shift by whole hours makes them fit.
drives_at_rest_shifted = { $rest_min } of { $driven_min } of driving fall in hours when the settings let the machine rest ({ $time_zone ->
    [none] no time zone is set, so UTC
   *[other] time zone { $time_zone }
}); { $shift_h } { $later ->
    [yes] later
   *[no] earlier
} they would fit{ $local_time ->
    [yes] : the log seems to hold local time labelled as UTC.
   *[no] .
}
calibrated = { $runs ->
    [one] One log
   *[other] { $runs } logs
} like this one were simulated on the plan; the visited fraction was corrected by { $points } points for the bias that they showed.
ways_disagree = Two ways of counting contradict each other: { $by_path_fraction } by the path that was fitted to turns and edges, { $as_logged_fraction } by the positions as logged, corrected for their errors. The second is used, and no ground is reported as missed.
as_logged_silent = Counted as logged it would be { $as_logged_fraction }: what was driven over in silences ({ $silent_fraction } of the time) is missing from that.
as_logged_sparse = Counted as logged it would be { $as_logged_fraction }: with one fix every { $period_s }, straight lines from fix to fix cut off the turns.
as_logged_spread = Counted as logged it would be { $as_logged_fraction }: positions that are off by about { $error_m } spread the path over ground that was not driven over.
as_logged_aside = Counted as logged it would be { $as_logged_fraction }: positions that are off by about { $error_m } carry the path off the lawn, or on to ground that was driven over before.
not_calibrated_no_width = The visited fraction was not calibrated: the cutting width is needed for that.
not_calibrated_no_plan = The visited fraction was not calibrated: a plan to drive on is needed for that.
not_calibrated_lanes = The visited fraction was not calibrated: parallel lanes cannot be simulated closely enough.
not_calibrated_no_drive = The visited fraction was not calibrated: the log shows no drive.
not_calibrated_no_run = The visited fraction was not calibrated: no machine like this one can drive on the plan.

## What follows where two answers to one question contradict each other

interval_holds_both = The range is made wide enough to hold both { $one_fraction } and { $other_fraction }.
interval_wider = The range is made { $times } times as wide.
interval_wider_by = The range is made wider by { $more_fraction } of the lawn to either side.
plan_not_believed = Only { $explained_fraction } of the turns are explained by the edges of the plan, so where the log does not show how the plan lies, no cause is named.
legs_unlike = The usual leg is { $logged_m } in the log and { $drawn_m } in simulated runs of the fitted machine: it moves in a way that the model does not know, and what simulated runs predict is less sure.
shows_wider = Ground up to { $widest_m } wide stays undecided: only wider pockets would show.

## Why a pocket was missed

too_narrow_to_explain = It was not driven over, but these positions are too poor to show why a gap { $widest_m } wide was left; walk there.
gap_too_narrow = The part behind ({ $behind_m2 }) cannot be reached: the gap is { $width_m } wide and the mower needs more than { $needed_m }.
no_way_in = This part ({ $area_m2 }) has no way in: on the plan it is not joined to the ground that the mower starts from.
no_way_in_driven = This part ({ $area_m2 }) has no way in: nothing that the mower drove leads to it.
turns_before_edge = The mower turns { $setback_m } before the edge here, so its disc does not reach this strip.
zone_elsewhere = The zone{ $zone ->
    [none] { "" }
   *[other] { " " }"{ $zone }"
} seems to lie elsewhere than it is drawn: the mower drove { $path_m } inside the drawn zone and turned at a line outside it.
zone_elsewhere_towards = The zone{ $zone ->
    [none] { "" }
   *[other] { " " }"{ $zone }"
} seems to lie further { $towards_deg } than it is drawn: the mower drove { $path_m } inside the drawn zone and turned at a line outside it.
stuck_on_the_way = The mower got stuck { $times ->
    [1] once
    [2] twice
   *[other] { $times } times
} ({ $lost_min }) on the way to this part.
stuck_on_the_way_past = The mower got stuck { $times ->
    [1] once
    [2] twice
   *[other] { $times } times
} ({ $lost_min }) on the way to this part and got past { $at_least ->
    [yes] at least { $past ->
        [1] once
        [2] twice
       *[other] { $past } times
    }
   *[no] { $past ->
        [0] never
        [1] once
        [2] twice
       *[other] { $past } times
    }
}.
passage_shut = The { $width_m } passage seems to be shut: in { $driven_h } of driving { $expected ->
    [one] 1 crossing was expected and none was seen.
   *[other] { $expected } crossings were expected and none was seen.
}
something_stands = Something about { $widest_m } wide stands here that the plan does not show: the mower turned round at it { $turns ->
    [1] once
    [2] twice
   *[other] { $turns } times
} and never got in.
something_may_stand = Something about { $widest_m } wide stands here, or the lawn has a hole: the mower turned round at it { $turns ->
    [1] once
    [2] twice
   *[other] { $turns } times
} and never got in. Is it a bed, a tree or a pond? A plan that shows it would say.
strip_stays = A strip { $width_m } wide is left along { $length_m } of the { $edge_deg } edge.
strip_stays_turns = A strip { $width_m } wide is left along { $length_m } of the { $edge_deg } edge: the mower turns { $here_m } before the edge here, { $elsewhere_m } elsewhere.
passage_seldom_found = { $entries ->
    [0] Not once
    [1] Only { $at_least ->
        [yes] at least once
       *[no] once
    }
    [2] Only { $at_least ->
        [yes] at least twice
       *[no] twice
    }
   *[other] Only { $at_least ->
        [yes] at least { $entries } times
       *[no] { $entries } times
    }
} in { $driven_h } of driving did the mower find its way through the { $width_m } passage; the { $behind_m2 } behind got { $share_ratio } of their share.
behind_passage_seldom = Nothing blocks this part, but the mower comes too seldom: the { $behind_m2 } behind the { $width_m } passage got { $share_ratio } of their fair share, and with outings as they are it will stay so.
comes_seldom = Nothing blocks this part, but the mower comes too seldom: the ground around it got { $share_ratio } of its fair share.
not_shown = It is left out more often than luck explains, but this log does not show why; walk there.

## Evidence for it

luck_not_lanes = A whole tour of lanes leaves no gap { $width_m } wide to luck.
luck_under_thousandth = Luck alone leaves a gap { $width_m } wide on fewer than 1 in 1,000 such lawns.
luck_one_in = Luck alone leaves a gap { $width_m } wide on about 1 in { $lawns } such lawns.
passage_width = { $width_m } at its narrowest, { $free_m } of it free for the mower's middle; { $length_m } long.
passage_crossings = It changed sides { $at_least ->
    [yes] at least { $crossings ->
        [1] once
        [2] twice
       *[other] { $crossings } times
    }
   *[no] { $crossings ->
        [0] never
        [1] once
        [2] twice
       *[other] { $crossings } times
    }
}; a machine that roams freely would have done so { $expected ->
    [0] less than once
    [1] once
    [2] twice
   *[other] { $expected } times
} on this path.
driven_behind = { $path_m } driven behind it, { $share_ratio } of the fair share.
nothing_driven_in = No path was driven in it.
cells_near_edge = Nine tenths of it lie within { $within_m } of the edge.
path_in_zone = { $path_m } of path inside the zone as drawn.
turns_beside = { $turns ->
    [one] 1 turn
   *[other] { $turns } turns
} beside this pocket, where the plan has no edge.
stops_on_the_way = { $stops ->
    [one] 1 stop
   *[other] { $stops } stops
}, { $lost_min } in all; { $passes ->
    [one] 1 pass
   *[other] { $passes } passes
} without a stop.
share_behind = The part behind got { $share_ratio } of its fair share.
crossings_expected = { $expected ->
    [one] 1 crossing
   *[other] { $expected } crossings
} expected, none seen.
turns_in_front = { $turns ->
    [one] 1 turn
   *[other] { $turns } turns
} in front of it, where the plan has no edge.
turns_around = { $turns ->
    [one] 1 turn
   *[other] { $turns } turns
} at it, along { $rim_fraction } of its open rim.
passes_expected = { $passes ->
    [one] 1 pass
   *[other] { $passes } passes
} expected over ground of this width, none seen.
strip_shape = { $length_m } long, { $widest_m } at its widest, nine tenths of it within { $within_m } of the edge.
turns_along = { $turns ->
    [one] 1 turn
   *[other] { $turns } turns
} along its inner side.
path_nearby = Close to it, { $share_ratio } of the lawn's mean path was driven.
share_simulated = Simulated runs from this station give it { $share_ratio } of the lawn's mean.

## Evidence against it

gap_nearly_wide = The gap is nearly as wide as the mower needs, or hardly wider: measure it.
few_turns = Only { $turns ->
    [one] 1 turn.
   *[other] { $turns } turns.
}
visits_hidden = Positions this poor hide short visits.
strip_thin = The strip is thinner than three times the position error.
zone_may_be_open = The zone may be drawn right and have been opened on purpose.
also_behind_passage = The part also lies behind a { $width_m } passage.
one_outing_matters = One lucky outing would change these figures a great deal.
luck_leaves_such = With outings like these, luck leaves such a place now and then.
look_decides = Which of the two it is: { $look ->
    [passage] look whether anything stands in the passage.
    [width] measure the passage with a tape.
    [ground] look whether anything stands on that ground, or shuts it off.
    [zone] measure whether the zone lies where it is drawn.
    [stuck_spot] look at the place where the mower gets stuck.
    [edge] watch how far from the edge the mower turns there.
   *[another_log] log another { $log_h } of driving; if the mower can get in, { $told_fraction } of such logs show it there.
}

## Ground of which nothing is decided

not_yet = Nothing is wrong yet: { $driven_h } of driving are few for { $lawn_m2 }; gaps of { $widest_m } are normal now and then.
not_yet_until = Nothing is wrong yet: { $driven_h } of driving are few for { $lawn_m2 }; gaps of { $widest_m } are normal until about { $decided_h } of driving.
hidden_by_silence = The log is silent while the mower may have been there (chance { $chance_fraction }).
cause_withheld = This log does not show how the plan lies in the garden, so no cause is named and no change suggested. Look there, and check the plan or log better positions.
shown_too_little = The log shows too little to tell whether this was missed.

## What to look at where it got stuck

stuck_near = It lies { $distance_m } from { $feature ->
    [zone] the edge of exclusion zone "{ $name }"
    [obstacle] the edge of obstacle "{ $name }"
   *[lawn_edge] the lawn's edge
}: look for roots, a step or soft ground there.
stuck_in_passage = It lies in the { $width_m } passage: look for roots, a step or soft ground there.
stuck_in_passage_near = It lies in the { $width_m } passage, { $distance_m } from { $feature ->
    [zone] the edge of exclusion zone "{ $name }"
    [obstacle] the edge of obstacle "{ $name }"
   *[lawn_edge] the lawn's edge
}: look for roots, a step or soft ground there.
stuck_in_the_open = Nothing on the plan is near: look for roots, a hole or soft ground.
stuck_somewhere = Look for roots, a hole or soft ground.

## What to change

lay_guide_run = Lay a guide run with { $wire_m } of new wire to the far end of { $pocket } and send { $outings_of_ten } in 10 outings along it{ $longer ->
    [yes] , and let it work { $added_h } longer a day
   *[no] { "" }
}: in { $log_h } like these, usually about { $after_fraction } of { $pocket } is then driven over, against { $before_fraction } if nothing changes.
move_zone = Move the zone "{ $zone }" by { $shift_m } to where it is drawn, since the turns show that it is somewhere else{ $longer ->
    [yes] , and let the mower work { $added_h } longer a day
   *[no] { "" }
}: in { $log_h } like these, usually about { $after_fraction } of { $pocket } is then driven over, against { $before_fraction } if nothing changes.
facing_side = The side that faces { $faces_deg }.
shrink_zone = Move the side of the zone "{ $zone }" that faces { $faces_deg } back by { $shift_m }, so that the way beside it to { $pocket } is { $passage_m } wide{ $longer ->
    [yes] , and let the mower work { $added_h } longer a day
   *[no] { "" }
}: in { $log_h } like these, usually about { $after_fraction } of { $pocket } is then driven over, against { $before_fraction } if nothing changes.
add_zone = Keep the mower out of the place where it gets stuck ({ $spot }), so that it comes to { $pocket } more often{ $longer ->
    [yes] , and let it work { $added_h } longer a day
   *[no] { "" }
}: in { $log_h } like these, usually about { $after_fraction } of { $pocket } is then driven over, against { $before_fraction } if nothing changes.
work_longer = Let it work { $added_h } longer a day: in { $log_h } like these, usually about { $after_fraction } of { $pocket } is then driven over, against { $before_fraction } if nothing changes.
shift_boundary = Shift the boundary outwards by { $shift_m } along { $pocket }{ $longer ->
    [yes] , and let the mower work { $added_h } longer a day
   *[no] { "" }
}: in { $log_h } like these, usually about { $after_fraction } of { $pocket } is then driven over, against { $before_fraction } if nothing changes.

## How well a simulated machine fits the log

fit_trusted = A simulated machine that drives as this one did ({ $speed_mps }, learnt from { $turns ->
    [one] 1 turn
   *[other] { $turns } turns
} and { $outings ->
    [one] 1 outing
   *[other] { $outings } outings
}) visits as much of the lawn as the log shows.
fit_visits_differ = Simulated runs visit more or less of this lawn than the log shows: something on the ground is missing from the plan, or the machine behaves differently from day to day. Predictions are given with wider ranges.
fit_path_differs = Simulated runs drive a longer or shorter path than the log shows. Predictions are given with wider ranges.
not_fitted_lanes = Nothing is predicted: the machine drives lanes, which do not depend on chance.
not_fitted_several_machines = Nothing is predicted: { $machines } machines worked here, and only one can be fitted.
not_fitted_few_turns = Nothing is predicted: { $turns ->
    [one] only 1 turn at an edge was seen
   *[other] only { $turns } turns at an edge were seen
}, and { $expected } are needed.
not_fitted_no_legs = Nothing is predicted: the path shows no straight legs between turns.
not_fitted_no_ground = Nothing is predicted: the plan leaves no ground to drive on.
not_simulated = Nothing is predicted: { $why }.

## Hours and grass

promise_beyond_hours = { $promised_fraction } within { $promised_days ->
    [one] 1 day
   *[other] { $promised_days } days
} cannot be reached with longer hours: it would take { $needed_h } of work a day.
promise_needs_hours = { $promised_fraction } within { $promised_days ->
    [one] 1 day
   *[other] { $promised_days } days
} takes about { $needed_h } of work a day at this pace; it worked { $worked_h }, of which { $driven_h } driving.
promise_beyond_reach = No working hours are long enough to reach { $promised_fraction } within { $promised_days ->
    [one] 1 day
   *[other] { $promised_days } days
}: too much ground is missed. It worked { $worked_h } a day, of which { $driven_h } driving.
promise_hours_unknown = It worked { $worked_h } a day, of which { $driven_h } driving; this log cannot tell what { $promised_fraction } within { $promised_days ->
    [one] 1 day
   *[other] { $promised_days } days
} would take.
lower_cut_unknown = This log cannot tell whether every place was driven over at the present cutting height.
lower_cut = Every place wide enough to see was driven over at the present height ({ $visited_fraction } of the lawn at least): the cutting height may be lowered by one step.
lower_cut_places_open = Leave the cutting height as it is: { $places ->
    [one] 1 place wide enough to see has not been driven over yet
   *[other] { $places } places wide enough to see have not been driven over yet
}, and high grass stops a machine that is set low.
lower_cut_unsure = Leave the cutting height as it is: only { $visited_fraction } of the lawn is sure to have been driven over, and high grass stops a machine that is set low.
grass_log_too_short = Grass that grows { $growth_mm } a day may go { $allowed_days ->
    [one] 1 day
   *[other] { $allowed_days } days
} between visits (one-third rule); this log of { $log_days ->
    [one] 1 day
   *[other] { $log_days } days
} is too short to show whether any went longer.
grass_overdue = { $overdue_fraction } of the lawn went longer than { $allowed_days ->
    [one] 1 day
   *[other] { $allowed_days } days
} without a visit, too long for grass that grows { $growth_mm } a day (one-third rule): more passes are needed.
grass_too_many_passes = Each place is driven over { $passes } times in the { $allowed_days ->
    [one] day
   *[other] { $allowed_days } days
} that the grass could wait (one-third rule): fewer hours would do, and spare the turf.
grass_enough_passes = No more than { $allowed_days ->
    [one] 1 day
   *[other] { $allowed_days } days
} passed between visits, as grass that grows { $growth_mm } a day needs (one-third rule).

## What a change brought

lawn_unknown = These logs cannot tell whether the lawn as a whole is better.
lawn_more = { $points } points more of the lawn are driven over than before.
lawn_less = { $points } points less of the lawn are driven over than before.
lawn_alike = The lawn as a whole shows no difference beyond the luck of a night.
pockets_mended = Mended: { $pockets }.
pockets_better = Better: { $pockets }.
pockets_new = New: { $pockets }.
pocket_compared = { $pocket }: { $before_fraction } before, { $after_fraction } after; { $change ->
    [mended] { $within_luck ->
        [yes] nearly all of it is driven over now, but luck alone would do that in more than one in ten such pairs of logs: look again after a few nights
       *[no] nearly all of it is driven over now
    }
    [better] more of it is driven over than luck would bring
    [new] it was driven over before
   *[unchanged] { $within_luck ->
        [yes] more of it is driven over, but no more than luck may bring
       *[no] no difference beyond luck
    }
}.
change_decided = { $pocket }: decided after { $decided ->
    [one] the first
   *[other] { $decided }
} of { $nights } nights, with an error of at most 5 % however often you looked.
change_open = { $pocket }: { $more ->
    [one] one more night
   *[other] { $more } more nights
} like these would decide it.

## What to beware of

blades_on_lawn = Moving blades: stop and disable the machine before you touch it; keep children and pets off the lawn while it works.
blades_near = Moving blades: stop and disable the machine before you work near it.
outline_from_drive = No plan was given: the outline is drawn from the drive itself. Lawn that the mower never came near is not counted, and what it went round is taken for an island.
plan_fault = Plan: { $fault }.
dig_at_spot = Before you dig at a stuck spot: have buried cables and pipes located; private lines are not marked. Roots may belong to a protected tree.
dig = Before you dig: have buried cables and pipes located; private lines are not marked.
zone_may_protect = A zone may protect roots, wiring or people: find out why it is there before you change it.
hours_by_day = Add hours by day: at night small animals are about.
driven_in_the_dark = { $dark_h } of driving fell in the dark, when hedgehogs and other small animals are about: let it work by day.
beyond_the_line = Beyond the line may be paving, water, a slope or somebody else's ground: look before you shift it.
look_before_zone = Look at the ground first: a root, an edge or wet ground that can be mended needs no zone.
guide_exit_unknown = The log does not show where along a guide run this machine leaves it; somewhere on the last two fifths is assumed. Where it can be set, let it leave near the end.
local_codes = Local codes and the machine's own manual come first.
other_reasons = A difference describes what was driven over in these logs. Something other than the change may be behind it: weather, other hours, a blade, somebody's garden table.
at_equal_hours = The two sides differ in driving hours; they are compared after equal hours.
plan_unsure_before = The log does not show how the plan lies in the garden before the change, so places there may be off.
plan_unsure_after = The log does not show how the plan lies in the garden after the change, so places there may be off.
place_often = Driven over { $visits ->
    [one] once
   *[other] { $visits } times
}, the lawn { $lawn_visits } in the mean. If the grass is long all the same, look at the blades, the cutting height, how it grows there, and at slopes.
place_seldom = Driven over seldom: { $visits ->
    [one] once
   *[other] { $visits } times
}, the lawn { $lawn_visits } in the mean. Look at what narrows the way there: a passage, a corner, an edge close by.
place_few = Driven over { $visits ->
    [one] once
   *[other] { $visits } times
} so far, the lawn { $lawn_visits } in the mean: fewer, but no more so than luck alone does. More nights decide.
place_never = Missed: it lies in pocket { $pocket } ({ $area_m2 }).
place_gap = Not driven over in this log, in a gap so small that luck alone leaves it. Log another night and ask again.
place_not_yet = Not driven over yet: it lies in { $pocket }, which luck still explains. { $decided_h } of driving in all decide.
place_not_yet_open = Not driven over yet: it lies in { $pocket }, which luck still explains. Log more nights.
place_unseen = This log cannot tell: it lies in { $ground }, ground without evidence. Log a night without silences there.
place_is_stuck_spot = The machine lost time here: stuck spot { $spot }, { $lost_min } in all.
place_off_lawn = It lies { $distance_m } off the lawn, where nothing is counted. If it is lawn, the plan leaves it out.
place_elsewhere = It lies { $distance_m } from the lawn: in another garden, or one of its numbers is wrong.
place_beyond_outline = This log cannot tell: it lies { $distance_m } outside the lawn that the drive drew. If it is lawn, draw a plan that has it.
place_in_island = Never entered: it lies in island { $island } ({ $area_m2 }), that the mower turned at from several sides. A bed, a tree, a pond, or lawn behind something? A plan settles it.
place_cannot_tell = This log cannot tell: its positions are off by about { $error_m }, and within that the ground is driven over often and never. Log with a better receiver, or longer.
place_compared = { $said ->
    [none] The place asked about
   *[other] “{ $said }”
}: driven over { $before_visits ->
    [one] once
   *[other] { $before_visits } times
} in { $before_h } of driving before, { $after_visits ->
    [one] once
   *[other] { $after_visits } times
} in { $after_h } since.
place_needs_width = Visits are not counted without the cutting width: measure it, give it, and ask again.
nights_unknown = These logs cannot tell how much one night differs from the next, so no difference can be called real.

## Words for a course

compass = { $eighth ->
    [0] north
    [1] north-east
    [2] east
    [3] south-east
    [4] south
    [5] south-west
    [6] west
   *[7] north-west
}

## What our own words mean

cause = { $value ->
    [walled_off] no way in
    [narrow_passage] narrow passage
    [edge_band] strip along the edge
    [zone_misplaced] line not where it is drawn
    [beyond_stuck_spot] beyond a stuck spot
    [too_few_visits] comes by too seldom
    [too_little_time] not driven long enough
   *[undetermined] not shown by this log
}
asked-short = { $value ->
    [place_often] Driven over like the rest
    [place_seldom] Driven over seldom
    [place_few] Driven over less so far
    [place_never] Missed
    [place_gap] Not driven over
    [place_not_yet] Not yet
    [place_not_yet_open] Not yet
    [place_is_stuck_spot] The mower gets stuck here
    [place_off_lawn] Off the lawn
    [place_elsewhere] Somewhere else
    [place_in_island] Never entered
    [place_needs_width] Not counted
   *[place_cannot_tell] This log cannot tell
}
cause-meaning = { $value ->
    [walled_off] The machine has no way in: the gap is too narrow for it, or something stands there.
    [narrow_passage] The way in is so narrow that the machine seldom finds it.
    [edge_band] A strip along the edge stays outside the line at which the machine turns.
    [zone_misplaced] The machine turns at a line that lies elsewhere than the plan shows.
    [beyond_stuck_spot] The machine gets stuck on the way there.
    [too_few_visits] The way is open, but its drives lead there too seldom.
    [too_little_time] The whole lawn fills up as it should; it needs more hours.
   *[undetermined] This log does not show why.
}
suggestion = { $value ->
    [guide_run] Lay a guide run
    [zone_move] Move an exclusion zone
    [zone_shrink] Make an exclusion zone smaller
    [zone_add] Add an exclusion zone
    [more_hours] Work longer
   *[boundary_shift] Shift the boundary
}
suggestion-inline = { $value ->
    [guide_run] lay a guide run
    [zone_move] move an exclusion zone
    [zone_shrink] make an exclusion zone smaller
    [zone_add] add an exclusion zone
    [more_hours] work longer
   *[boundary_shift] shift the boundary
}
noise-source = { $value ->
    [station_scatter] scatter while standing at the station
    [rest_scatter] scatter while standing elsewhere
    [driving_roughness] roughness of the path while driving
    [device_card] the device card of the receiver
    [stated] the settings
    [receiver_claim] the receiver's own claim
    [dilution_of_precision] satellite geometry (DOP) times a usual range error
   *[default] a stated default, since the log gives none
}
promise = { $value ->
    [kept] kept
    [broken] not kept
   *[cannot_tell] this log cannot tell
}
fix-quality = { $value ->
    [unknown] not stated
    [autonomous] satellites alone
    [differential] differential
    [precise] precise service
    [rtk_fixed] RTK fixed
    [rtk_float] RTK float
    [estimated] dead reckoning
    [manual] typed in
    [simulated] simulator
   *[other] unknown code
}
pocket-change = { $value ->
    [mended] mended
    [better] better
    [new] new
   *[unchanged] unchanged
}
out-of-reach = { $value ->
    [edge] a strip along the edge or a corner: the machine turns before the disc is there
   *[cut_off] shut off behind a passage that is too narrow, or without any way in
}
presence = { $value ->
    [came] later only: its place was driven through before
    [went] at first only: its place was driven through since
    [came_and_went] for a while: its place was driven through before and since
   *[throughout] all the time
}
way-home = { $value ->
    [guide_run] along a guide run
    [boundary] along the boundary
   *[straight] straight over the lawn
}
lower-cut = { $value ->
    [yes] yes
    [not_yet] not yet
   *[cannot_tell] this log cannot tell
}
growth-source = { $value ->
    [settings] from the settings
   *[temperature] from the mean temperature
}
failure-reason = { $value ->
    [unreadable] unreadable
    [damaged] damaged
    [clock] clock
    [plan] plan
    [settings] settings
    [analysis] analysis
    [time] took too long
    [memory] too little memory
    [died] broken off
   *[pieces] in pieces
}
fit-figure = { $value ->
    [visited_fraction] lawn visited, %
    [path_m] path driven, { $unit }
    [visits_map_correlation] visits map, correlation with the mean of simulated runs
    [leg_m] leg between two turns, median, { $unit }
   *[revisit_path_m] path between two visits of a place, median, { $unit }
}

## Stuck spots

stuck-came = It mostly came driving { $course_deg }.

## page: summary

count-pocket = { $count ->
    [one] 1 pocket
   *[other] { $count } pockets
}
count-area = { $count }, { $area }
about-more-driving-are = About { $hours } more of driving are needed.
driven-over-percent-area = { $percent } of { $area } was driven over.
driven-over-percent-area-range = { $percent } of { $area } was driven over ({ $range }, with a probability of 90 %).
lost-at = { $time } lost at { $id }
suggestion-by = { $value ->
    [guide_run] Lay a guide run by { $length }
    [zone_move] Move an exclusion zone by { $length }
    [zone_shrink] Make an exclusion zone smaller by { $length }
    [zone_add] Add an exclusion zone by { $length }
    [more_hours] Work longer by { $length }
   *[boundary_shift] Shift the boundary by { $length }
}
nine-ten-logs-pocket = Nine of ten simulated runs: { $range_2 } of the pocket if changed, { $range } if nothing changes.{ $more ->
    [0] { "" }
    [one] { " " }1 more change is below.
   *[other] { " " }{ $more } more changes are below.
}
let-run-on-after = Let it run on. After { $hours } of driving in all, what is still bare then is more than bad luck.
luck-leaves-such-gap = Chance that luck alone leaves a gap like { $id }: { $chance }.
sure-not-driven-over = { $percent } sure that { $id } was not driven over
sure-change-helps = { $percent } sure that { $id } helps
change-brings-its-gain = In so many simulated runs the pocket gained, and the prediction held.
none-it-shows = None that this log can show
how-much-driven-over = How much was driven over depends on the width of the cutting disc, which was not given; the table for each width is below.
not-counted = Not counted
outline-drawn-from-log = The outline was drawn from the log itself, its edges right to about { $error }: lawn that the mower never came near is not counted.
asked-about = { $count }, { $area } in all, that the mower turned at from several sides and never entered: beds, trees, ponds, or lawn behind something? Left out of the lawn.
visit = Visit:
quote-open = “
quote-close = ”
asked-place = The place asked about
asked-row = Driven over { $visits }. Last { $last }; usually { $due }.
asked-row-never = Driven over { $visits }.
asked-mark = { $id }, asked about: { $said }
asked-visits = { $number } times in this log ({ $low } to { $high })
asked-visits-beside = { $visits }; the lawn { $mean } in the mean
asked-due = every { $hours } of driving
walk-first-hint = walk first along the edge at { $place }: on { $length } of it the mower turned nowhere
walk-first = Walk first along the edge at { $place }: on { $length } of it the mower turned nowhere.
nothing-needs-reason-again = Nothing needs a reason
this-log-cannot-tell = This log cannot tell
not-by = Not by luck
change-nothing-garden-on = Change nothing in the garden on the strength of this log.
measure-width-cutting-disc = Measure the width of the cutting disc and count again.
walk-round-lawn-with = Walk round the lawn with the logger and make a plan of it: what lies beyond the drive cannot be seen in the log.
no-ground-left-out = Luck explains every gap that was left.
one-count-no-interval = One count, no interval
lawn-driven-over-with = of the lawn driven over, with a probability of 90 %.

## terminal: mod

count-smaller-pocket = { $count ->
    [one] 1 smaller pocket
   *[other] { $count } smaller pockets
}
count-place = { $count ->
    [one] 1 place
   *[other] { $count } places
}
count-time = { $count ->
    [one] 1 time
   *[other] { $count } times
}
at-cm = { $percent } at { $width }
depends-on-cutting-width = depends on the cutting width, which was not given: { $list }
pockets-from = pockets from { $length } wide ({ $area })
log-good-enough-can = The log is good enough: it can show missed { $smallest }.
log-too-short-its = The log is too short: its positions are good, but bad luck alone may leave pockets up to { $length } wide ({ $area }).
log-not-good-enough = The log is not good enough: it can only show missed { $smallest }.
also-said = Also: { $said }
lawn-percent-number-area = { $percent } of the lawn, { $number } of { $area } ({ $interval })
missed-area = missed { $area }
not-yet = not yet { $area }
without-evidence = without evidence { $area }
none-told = this log cannot tell
none-known = nothing inside the drawn outline; what lies beyond it this log cannot tell
none-known-narrower = nothing from { $width } wide up inside the drawn outline; narrower pockets, and what lies beyond it, this log cannot show
none-narrower = nothing from { $width } wide up; narrower pockets this log cannot show
none-but-luck = nothing; luck explains the gaps
none-shown-unseen = none is shown, but { $area } are without evidence: this log cannot tell
smaller-gaps = smaller gaps { $area }
of-id = { $id } { $share } of { $area }
all-luck-does-not = { $count }, { $area } in all, more than luck explains
and-more = and { $more }
also-possible = also possible: { $join }
decided-after-driving-all = decided after { $hours } of driving in all
luck-still-explains-them = { $count }, { $area }: luck still explains them; { $decide }
lost-count = { $count }, { $time } lost
lost-within = { $count }, { $time } lost, within { $length } of { $place }
more-spots = and { $spots } more
ladder-title = Smaller and larger
ladder = By size, the mean of simulated logs: { $list }.
rung = { $size }: { $fraction }{ $lawn ->
    [none] { "" }
   *[other] , lawn { $lawn }
}{ $chosen ->
    [yes] { " " }(this one)
   *[no] { "" }
}
change-set = Together, the most ground for the work first, each counted after those before it: { $list }. Of the lawn, { $lawn } is then driven over.
set-step = { $id } { $area } more ({ $fraction } of these pockets)
visits-title = { $count ->
    [one] 1 visit to this garden
   *[other] { $count } visits to this garden
}
visits-when = When
visits-who = Who
visits-machine = Machine
visits-said = What the customer said
visits-changed = What was changed
visits-sure = Decided
visits-pocket = { $id } { $before } → { $after }
visits-decided = { $decided ->
    [none] { $more ->
        [none] not decided
        [1] not decided: one more night like these
       *[other] not decided: { $more } more nights like these
    }
    [beyond_luck] decided
    [1] decided after the first night
   *[other] decided after { $decided } nights
}
nights-differ = Single logs differ that much: nine of ten gardens are done after { $hours } of driving.
pocket-this-log-if = Pocket: { $percent } in this log, { $fraction } if nothing changes, { $fraction_2 } if changed{ $sure ->
    [none] { "" }
   *[other] ; { $sure } sure
}.{ $more ->
    [0] { "" }
    [one] { " " }And 1 more change.
   *[other] { " " }And { $more } more changes.
}
lawn-within-percent-days = { $percent } of the lawn within { $days }: { $word }{ $probability ->
    [none] { "" }
   *[other] { " " }(probability kept: { $probability })
}
one-every-driven-fixes = { $fixes }, one every { $time }; { $path } driven in { $time_2 }{ $silent ->
    [none] { "" }
   *[other] , { $silent } without fixes
}
log-too-short-positions = The log is too short: positions are good, but it shows nothing of a lawn yet.
log-not-good-enough-shows = The log is not good enough: it shows nothing of a lawn.
not-looked-for-without = not looked for without a cutting width
after-how-many-hours = how many hours it takes to decide cannot be said

## terminal: inspection

count-fix = { $count ->
    [one] 1 fix
   *[other] { $count } fixes
}
count-fix-repeats-the = { $count ->
    [one] 1 fix repeats the position before it
   *[other] { $count } fixes repeat the position before them
}
around-lat = around { $lat_deg }, { $lon_deg }
east-by = { $length } east by { $length_2 } north, { $middle }
made-by = { $format }, made by { $id }
its-bytes = { $percent } of its bytes
from-count = { $count } from { $share }{ $resolution ->
    [none] { "" }
   *[other] , steps of { $resolution }
}
first-on = ; first on line { $count }
first-on-line = ; first on line { $count }: { $id }
to-id = { $id } to { $id_2 }
one-every = { $fixes }, one every { $time }
driving-time = driving { $time }
at-station = at the station { $time }
standing-elsewhere = standing elsewhere { $time }
silent-time = silent { $time }
from-after-start-further = { $time } from { $time_2 } after the start, { $length } further on
shorter-value = ; and { $value } shorter
middle-below-number-number = { $number } in the middle, 95 % below { $number_2 }
last-digit-count-again = { $count } to the last digit
from-fix-fix-length = { $length } from fix to fix
drifting-length = { $length } drifting{ $time ->
    [none] { "" }
   *[other] { " " }over about { $time }
}
standard-deviation-per-axis = { $join } (standard deviation per axis)
from-figures = { $figures }; from { $word }
local-metres-no-place = in local metres, without geographic coordinates
no-bytes = no bytes
no-dates = no dates
not-known = not known

## terminal: comparison

dark-of-driven = { $dark } of { $driven } of driving{ $between }: hedgehogs and other small animals are about then
in-the-dark = In the dark: { $said }.
dark-between = { "" } (civil dusk { $dusk }, dawn { $dawn }{ $zone })
count-night = { $count ->
    [one] 1 night
   *[other] { $count } nights
}
both-plans-have-area = { $area } that both plans have
built-as = { $value ->
    [suggested] built as suggested
    [otherwise] built otherwise
   *[nothing] not built as suggested
}
predicted-for = { $built }; predicted for { $id }: { $percent } ({ $interval }), measured { $percent_2 }: { $held }
driving-percent = { $percent } ({ $interval }){ $equal ->
    [none] { "" }
   *[other] , { $equal } after equal hours
}; { $count }, { $hours } of driving
smaller-pockets = and { $pockets } smaller

## page: before digging

plan-on-paper = A plan, tried on paper
reaches-everything = By this plan the machine gets everywhere.
leaves-parts = { $count ->
    [one] One part
   *[other] { $count } parts
} of the lawn, { $area } in all, cannot be reached.
promise-needs = { $percent } within { $count ->
    [one] 1 day
   *[other] { $count } days
} takes about { $hours } of work a day.
promise-not-kept = { $percent } within { $count ->
    [one] 1 day
   *[other] { $count } days
} cannot be reached with more hours alone.
typical-run = The lawn as a typical one of the simulated runs leaves it after { $count ->
    [one] 1 day
   *[other] { $count } days
} of { $hours } of work each. Darker ground was driven over more often; hatched ground was missed.
count-day = { $count ->
    [one] 1 day
   *[other] { $count } days
}
nine-in-ten-gardens = in nine of ten runs { $low } to { $high }
give-width-for-days = Say how wide the disc cuts (machine.cut_width_m), and that there is room for the machine.
trim-by-hand = { $area } along edges and in corners stay long: trim them by hand
boundary-with-slack = round the lawn and its zones; ways between them and slack at corners come on top
no-way-through = no way through
done-after = { $share } of runs after { $count ->
    [one] 1 day
   *[other] { $count } days
}
share-of-driving = The share is that of outings without a guide run; at 100 % each square metre behind the passage is driven as often as elsewhere. What is driven over is from the simulated runs, guide runs among them.
from-middle = middle at { $place }
assumed-machine = A machine that turns with its middle { $setback } before the edge and drives { $speed_mps } straight until it turns by chance. Set machine.past_boundary_m, machine.speed_mps and the working hours to what is true of yours.
assumed-level = Level, dry ground: the plan has no heights, so slopes and soft ground are not in the forecast.

## page: handout

not-driven-over-up = Not driven over: { $area }, up to { $length } wide
mower-stood-here-all = The mower stood here { $times ->
    [0] never
    [1] once
    [2] twice
   *[other] { $times } times
}, { $time } in all
pocket-driven-over-this = { $why } Of the pocket { $percent } was driven over in this log; { $fraction } is expected if nothing changes, { $fraction_2 } if changed.
promised-lawn-within-percent = Promised: { $percent } of the lawn within { $days }. { $word }.
more-on-page-on = { $left_out } more on the page on screen.

## page: site_facts

count-way = { $count ->
    [one] 1 way
   *[other] { $count } ways
}
about-count = { $count } of about { $number }
usually-out-began-along = Usually { $time } out{ $charging ->
    [none] { "" }
   *[other] ; { $charging } at the station between two
}. { $count } began along a guide run.
brackets-usual-time-join = { $join }; in brackets the usual time.
day-hours = { $hours } a day
between-first-departure-last = Between first departure and last return, { $hours } of it driving. { $said }
growth-a-day = { $length } a day
tenth-lawn-steeper-steepest = A tenth of the lawn is steeper. The steepest part lies { $place }.
not-logged = not logged
more-than = more than hours

## page: compare

before-after = Before and after

found-when = { $value ->
    [before] before
   *[after] after
}

## page: facts

about-number = about 1 in { $number }
long-driven-over-times = { $length } long, driven over { $number } times as often as the lawn's mean, up to { $count }.
wire-length = { $length } of wire
shift-length = a shift of { $length }
more-day = { $hours } more a day
less-new-than-chance = finds less new ground than chance would (efficiency { $figure })
new-as-chance = finds new ground as chance would (efficiency { $figure }; 100 % is no overlap)
more-new-than-chance = finds new ground better than chance (efficiency { $figure }; 100 % is no overlap)
hardly-twice = hardly drives over ground twice (efficiency { $figure })
reach-both = 95 % after { $first }, 99 % after { $second } of driving
reach-95 = 95 % after { $after } of driving, 99 % out of reach
reach-99 = 99 % after { $after } of driving
reach-none = 95 % and 99 % out of reach
outings-sent-along-percent = { $percent } of the outings sent along it
half-lawn-driven-over = Half of the lawn was driven over at least this often; the mean is { $number }.
half-waits-are-shorter = Half of the waits are shorter. Nine in ten: { $interval_h }. 99 in 100: { $interval_h_2 }.
less-than = less than 1 in 10,000
cannot-be = cannot be said
not-counted-again = not counted
pocket-again = the pocket
whole-lawn = the whole lawn
longer-than-this-log = longer than this log
not-told-apart-yet = not told apart yet

## page: page

count-log-file = { $count ->
    [one] 1 log file
   *[other] { $count } log files
}
last-visit-longer-ago = Last visit longer ago than { $hours } at the end of the log
missed-area-again = missed, { $area }
stuck-lost = stuck, { $time } lost
not-yet-area = not yet, { $area }
not-yet-heading = Not yet: { $count } that more hours decide
to-start = { $start } to { $end } ({ $zone_words })
driving-from = { $span }. { $driven } of driving, from { $logs }.
without-evidence-area = { $area } without evidence. { $said }
outside-boundary-for-after = { $length } outside the boundary for { $time }, { $time_2 } after the start; { $came_back ->
    [yes] it came back by itself
   *[no] it did not come back within this log
}.
silence-after-start-may = { $time } of silence { $time_2 } after the start, { $place }: it may have stood there, for that long at most.
machine-efficiency = The machine { $efficiency }.
probability-kept-percent-again = Probability that it is kept: { $percent }.
lawn-within-percent-days-probability = { $percent } of the lawn within { $days }. { $probability }
lawn-report = Lawn report
times-driven-over-darker = Times driven over (darker: more often)
less-than-twice = less than twice
usual-time-between-two = Usual time between two visits (darker: more often)
time-again = in time
charging-station = charging station
without-dates = without dates
out-reach = out of reach

## page: method

count-outing = { $count ->
    [one] 1 outing
   *[other] { $count } outings
}
lawn-counted-squares-this = The lawn was counted in squares of this side; that alone moves the result by about { $number } points.
standard-deviation-per-axis-from = Standard deviation per axis, from { $word }.
plan-offset = { $east } east, { $north } north, turned { $turned }°
plan-moved-by-this = The plan was moved by this to fit the log; known within { $length }.
known-within-no-more = Known within { $length }: no more than chance, so the plan stays as it is drawn.
from-one = From { $fixes }, one every { $time }.
while-driving = While driving; { $outings }.
drift-length = { $length } drift
line-count = line { $count }
default-error = default error
from-plan = from the plan
from-log-itself-again = from the log itself
number-outings-not-known = number of outings not known

## morning

count-garden = { $count ->
    [one] 1 garden
   *[other] { $count } gardens
}
count-thing = { $count ->
    [one] 1 thing
   *[other] { $count } things
}
your-delivery = { $gardens } of { $count } have sent nothing since { $since }: that is your delivery (upload, cards, network), not the gardens.
is-mended = { $garden }: { $alarm } since { $since } is mended since { $mended }.
is-known = { $said ->
    [none] { "" } (known)
   *[other] { "" } (known: { $said })
}
alarm = { $value ->
    [missed_pocket] missed ground
    [stuck_spot] gets stuck
    [lost_hours] drives fewer hours
    [less_visited] less driven over
    [absent] silent
    [receiver_worse] receiver worse
    [silences] long silences
   *[promise] promise broken
}
bring = { $value ->
    [missed_pocket] Bring the plan, a tape and pegs
    [stuck_spot] Bring a spade, turf or boards
    [lost_hours] Bring a battery and contact cleaner
    [less_visited] Bring spare blades and the garden's own page
    [absent] Bring a charged logger and a card
    [receiver_worse] Bring a receiver and an antenna lead
    [silences] Bring a receiver and a charged logger
   *[promise] Bring the working hours, to add some by day
}
night-visit-with-log = Night of { $id }: { $gardens } of { $count } to visit, { $with_log } with a log{ $resting ->
    [0] { "" }
   *[other] , { $resting } resting
}, { $count_2 } failed

## words/comparison

points-fraction = { $fraction } points
interval-points = { $points } (90 % interval { $low } to { $high } points)
interval-not-worked-out = { $points } (no interval)
points-from-night-night = { $number } points from night to night
standard-deviations-points-from = standard deviations: { $number } points from position errors, { $nightly }
to-percent = { $percent } ({ $number } to { $percent_2 })
how-nights-differ-cannot = how nights differ cannot be told from so few

## terminal: hints

log-driving-more-give = log { $hours } of driving more and give all logs together; what is not yet decided then is
promise-give-logs-as = the promise is of { $days }: give the logs of as many days together
measure-width-cutting-disc-give = measure the width of the cutting disc and give it with --cut-width 22cm
walk-once-round-lawn = walk once round the lawn with a receiver; tussock plan from-walk makes a plan of that, and --plan takes it
mended-plan-is-written = analyse --write-plan FILE writes the plan drawn as the log shows the garden to be

## gpx

missed-widest = Missed: { $area }, widest { $length }. { $said }
stuck-lost-within = Stuck: { $count }, { $time } lost, within { $length }. { $said }
suggested-guide = Suggested guide run. { $said }
tussock-id = tussock { $id }
tape-figures = { $figures } Tape: { $tape }.
ground-mower-left-out = Ground that the mower left out, and places where it lost time.

## Checks

checks-hold = { $held ->
    [0] None of { $all } checks holds
    [one] { $all ->
        [one] The one check holds
       *[other] 1 of { $all } checks holds
    }
   *[other] { $held } of { $all } checks hold
}
checks-say = { $sum }; { $fails }
check = { $value ->
    [fixes_left_out] Fixes left out, against their prediction
    [halves_of_log] One half of the log, against the other
    [plan_place] The plan's place, against the turns
    [turns_at_edges] Turns, against each edge of the plan
    [drawn_garden] A garden drawn from the fitted machine, against the log
    [cell_sum] The map's squares, against the headline
    [as_logged] As logged, against corrected
    [two_roads] The fitted path, against the corrected count as logged
    [silences] Silences, against what counts as missed
   *[shown_ground] What the log is said to show, against the map
}
check-fails = { $value ->
    [fixes_left_out] fixes err by more than stated
    [halves_of_log] the two halves of the log lie beside each other
    [plan_place] turns do not gather at the edges of the plan
    [turns_at_edges] turns do not lie on the edges of the plan
    [drawn_garden] the machine does not drive as the model of it
    [cell_sum] the map does not add up to the headline
    [as_logged] the count as logged contradicts the corrected one
    [two_roads] two ways of counting contradict each other
    [silences] missed ground may have been driven over in a silence
   *[shown_ground] the width that shows was raised to that of undecided ground
}
check-fails-edge = turns do not lie on the { $edge_deg } edge
check-is = { $value ->
    [fixes_left_out] { $number } times the stated error
    [halves_of_log] { $length } apart
    [plan_place] { $percent } of the turns explained
    [turns_at_edges] { $number } times the most that an edge may be off
    [drawn_garden] legs { $number } apart (natural logarithm of their ratio)
    [cell_sum] { $points } points apart
    [as_logged] { $points } points apart
    [two_roads] { $number } standard deviations apart
    [silences] a chance of { $percent } at most
   *[shown_ground] { $length }
}

## page: parts of every page

show-on-map-id = show on the map, { $id }
show-on-map = show on the map
map-nearer = nearer
map-farther = farther
map-whole = whole lawn
map-move = Move the map
in-short = In short
foot-driven-over = Driven over is what positions can show; whether grass was cut there is for the eye.

## page: the answers

ask-log = Is the log good enough?
ask-missed = What was missed?
ask-why = Why?
ask-change = What to change?
ask-sure = How sure?
log-yes = Yes
log-too-short = Positions yes, but too short
log-no = No
part-visited = driven over
part-missed = missed
part-not-yet = not yet
part-unseen = unseen
part-sliver = smaller gaps
change-log-again = Log again first
change-look = Walk there and look
change-give-width = Give the cutting width
change-nothing-yet = Nothing yet
change-give-outline = Give the outline first
change-nothing = Nothing
others-end = { $list }.

## page: report

title-report = { $title }: where the mower has not been
picked-more = all that is known of it
picked-close = close
to-answers = To the answers
where-not-been = Where the mower has not been
map = Map
what-map-shows = What the map shows
ground = Ground
ground-none = none
map-drawn-from = Drawn from logged positions: it shows ground that was driven over.
map-placeless = The log has no geographic coordinates; the map lies on its own axes.
map-moves = Drag to move; pinch, double-click or + and − to come nearer; arrow keys when the map has the focus.
places = Places
missed-and-why = What was missed, and why
missed-lead = Ground that stayed bare although luck would hardly have left a gap this wide. Walk to the middle of each with two tapes.
up-to-wide = up to { $length } wide
see = See
evidence-and-others = What speaks for it and against it, and what else it may be
evidence = What speaks for it and against it
how-sure-that = How sure that is
rank-first = first
rank-other = also possible
evidence-for = for
evidence-against = against
middle-at = Middle at { $place }.
change-and-gain = What to change, and what it will bring
change-lead = Predicted by driving a simulated machine, fitted to this log, with and without the change. The dot is what most single nights will show; nine of ten lie between the ends of the line.
for-pockets = for
needs = Needs { $list }.
together-with = Together with { $list }.
driven-over = Driven over
in-this-log = in this log
if-nothing-changes = if nothing changes
if-changed = if changed
predictions-of = Predictions of { $id }
gained-in-runs = The pocket gained and the prediction held in { $percent } of simulated runs.
gain-shows-after = The gain shows after { $hours } of driving in most of them.
where-stuck = Where it got stuck
stuck-lead = Places away from the station where the machine lost time again and again.
time-lost = { $time } lost
stuck-within = Within { $length } of { $place }.
drove-through = { $count ->
    [one] It drove through 1 time without getting stuck.
   *[other] It drove through { $count } times without getting stuck.
}
not-yet-lead = Bare ground that luck still explains. It needs no change, only more hours, before anything can be said.
head-pocket = Pocket
head-area = Area
head-widest = Widest
head-chance = Chance by luck
head-decided = Decided after
head-where = Where
not-yet-table = Not yet
hours-are-driving = Hours are driving hours from the start of this log.
passages-and-ways = Passages, ground out of reach, and ways home
passages = Passages
head-passage = Passage
head-width = Width
head-free = Free for the machine's middle
head-length = Length
head-behind = Lawn behind
head-crossed = Crossed
head-share-behind = Share of its fair path behind
passage-shut-word = shut
crossings-are = Crossings are changes of side; of about: what a machine that roams freely would make on the same path.
out-of-disc = Out of reach of the disc
turns-inside = Turns inside the line by
turns-inside-means = Usual distance between the middle of the machine and the line at which it turns.
outings = Outings
ways-home = Ways home
drawing-differs = How does the drawing differ from the garden?
plan-would-settle = What would a plan settle?
islands-or-lawn = Islands, or lawn out of reach?
islands = Islands
head-island = Island
in-no-plan = Stands in no plan
in-no-plan-lead = Things that turned the machine round inside the lawn.
head-thing = Thing
head-turns = Turns at it
head-across = Across, about
head-stood = Stood there
things-in-no-plan = Things in no plan
hours-and-grass = Working hours and grass
works = Works
allowed = Allowed
allowed-means = Working hours in the settings, mean over the week.
promise-needs-label = The promise needs
promise-needs-means = Working hours at this pace; no hours would do where part of the lawn does not fill up at all.
lower-blades = Lower the blades?
growth = Growth
longest-wait = Longest wait allowed
one-third-rule = Under the one-third rule: never take more than a third of the blade at once.
slope = Slope
also-seen = Also seen
worn-line-is = Worn line:
stray-is = Stray:
possible-stop-is = Possible stop:
paper-what = What to look at, and what to do
paper-no-place = No place needs a look: luck explains every gap that was left, and the machine got stuck nowhere.
paper-changes = Suggested changes
stills-title = How the lawn filled up
stills-lead = Six maps, each after another sixth of the driving.
still-new = new since the map before
still-before = driven over before
not-driven-over = not driven over
safety = Safety
paper-stop = Stop the machine and disable it before you touch it.
paper-dig = Have buried cables and pipes located before digging for wire. Ask what a zone protects before you move it. Add hours by day, not by night.
manual-first = Local codes and the machine's own manual come first.
paper-keep-off = Keep children and pets off the lawn while the machine works. Keep lines back from slopes and water edges. Mains work is for a licensed electrician.
paper-looked-at = Looked at on
paper-signed = By, signed
paper-next-step = Agreed next step
how-fast = How fast the lawn filled up, and how often it was visited
ground-gained = Ground gained over driving time
line-this-log-interval = this log, with its 90 % interval at the end
line-this-log = this log
line-random = random search
line-no-overlap = no overlap at all
line-promised = promised
random-law-means = A machine that wanders by chance follows the random-search law (Koopman 1956): the more is done, the more often it meets ground that it knows. One that never drove over the same ground twice would follow the line of no overlap.
pattern-efficiency = Pattern efficiency
to-95 = To 95 % of the lawn
to-95-means = Hours of driving at this pace; out of reach where part of the lawn does not fill up at all.
to-99 = To 99 %
to-99-means = The same for all but a hundredth.
the-promise = The promise
how-often = How often each place was driven over
bars-mean = Each bar is the part of the lawn that was driven over so many times. The hatched bar was not driven over.
waits-mean = So many of the waits between two visits are shorter; the unfinished last wait of each place is counted as unfinished.
visits-typical = Visits, typical
evenness = Evenness (Gini)
evenness-means = 0 would be the same number of visits everywhere, 1 all visits in one place.
time-between = Time between visits
overdue-label = Overdue
overdue-means = This part of the lawn has grown past the one-third rule since its last visit.
hours-by-activity = Hours by activity
same-in-figures = The same in figures
activity-in-figures = Hours by activity in figures
nights-not-drawn = { $count ->
    [one] 1 earlier night is not drawn.
   *[other] { $count } earlier nights are not drawn.
}
nothing-claimed = Nothing is claimed about the time without fixes.
each-lawn = Each lawn apart
head-lawn = Lawn
with-bracket = { $figure } ({ $more })
for-each-width = Driven over, for each cutting width
how-counted = How this was counted
of-the-log = Of the log: { $said }
cutting-width = Cutting width
cutting-width-means = As given in the settings. A centimetre more would count more ground.
counting-square = Counting square
realisations = Realisations
counted-once = Counted once, on the likeliest path; the position error is not yet played through.
counted-often = So many likely paths were counted, to see how far the position error moves the result.
as-logged = As logged
as-logged-means = What joining the raw fixes by straight lines would give. For comparison only.
reachable = Reachable
reachable-means = The part of the lawn that the disc can get to at all.
position-error = Position error
beware = Beware
default-error-means = The log gives no way to tell how exact it is; log an hour at the station to find out.
plan-against-log = Plan against log
outline = Outline
outline-from-plan = Lawn, zones and obstacles as drawn in the plan.
outline-from-log = Ground beyond the outermost drive is not counted, so no figure here is for the whole lawn. Walk the outline to change that.
path = Path
usual-speed = Usual speed
beside-surveyed = The log beside a surveyed path
errors-surveyed = Errors against the surveyed path
head-error = Error
errors-mean = Cross-track: to the nearest place of the path, left of it positive. Along-track: ahead of where the machine should have been then, timing: how much later it came by. Pass to pass: how much the cross-track error changes from one pass to the next beside it, within 15 minutes (after ISO 12188-1). Logged are the fixes, located is the path found behind them.
simulated-beside = The simulated machine, beside the log
predictions-made = Predictions are made from it.
predictions-none = No predictions are made from it.
head-figure = Figure
head-in-log = In the log
head-in-runs = { $count ->
    [one] In 1 simulated run
   *[other] In { $count } simulated runs
}
log-and-simulation = Log and simulation
figure-range = { $figure } ({ $low } to { $high })
log-files = The log files, and what was not used
made-by-label = made by
fixes-of = { $count ->
    [one] 1 fix of
   *[other] { $count } fixes of
}
not-used-of-file = Not used of this file
head-not-used = Not used
head-why = Why
head-first-at = First at
everything-used = Everything in it was used.
before-you-change = Before you change anything
stop-and-manual = Stop the machine and disable it before you touch it. Local codes and the machine's own manual come first.
all-dangers = All that is dangerous about such work
danger-blades = Moving blades.
danger-blades-means = Stop the machine and disable it before you touch it. Keep children and pets off the lawn while it works.
danger-logger = Fitting a logger.
danger-logger-means = Never over the stop button or where the machine senses lifting or tilting. Fasten it clear of the blades.
danger-digging = Digging for wire.
danger-digging-means = Have buried cables and pipes located first. Private lines are not marked.
danger-slopes = Slopes and water.
danger-slopes-means = Keep the line well back from edges that the machine could slide over.
danger-mains = Mains.
danger-mains-means = Work on the charging station's supply is for a licensed electrician.
danger-night = Night.
danger-night-means = Add hours by day: hedgehogs and other small animals are out at night.
danger-zones = Zones.
danger-zones-means = Ask what a zone is there for before you move or shrink it. It may protect roots, wiring or people.

## page: before and after

title-compare = { $title }: before and after
difference = Difference
more-than-before = More of the lawn driven over after than before; { $meaning }.
side-driven-over = { $side }: { $percent } driven over
side-facts = { $interval }{ $equal ->
    [none] { "" }
   *[other] ; { $equal } after equal hours
}. { $count }, { $hours } of driving.
map-move-side = Move the map, { $side }
only-summary = Only a summary was kept, so there is no map.
compare-map-key = Hatched: most of the pocket was not driven over on that side. Dashed outline: most of it was. Darker ground was driven over more often; both maps share one scale.
how-sure-difference = How sure of the difference
counted-on = Counted on
counted-on-common = { $area } of lawn that both plans have.
lawn-only = { $when ->
    [before] { $area } was lawn only before
   *[after] { $area } is lawn only since
}
what-became = What became of each pocket
head-found = Found
head-before = Driven over before
head-after = after
head-became = What became of it
pockets = Pockets
show-on-both = { $id }, show on both maps
predicted-and-measured = Predicted, and measured
predicted-measured = { $built ->
    [otherwise] Predicted for what was built { $predicted }, measured { $measured }: { $meaning }.
   *[other] Predicted { $predicted }, measured { $measured }: { $meaning }.
}
predicted = predicted
measured-after = measured after

## page: plan on paper

title-plan = { $title }: before digging
before-digging = Before digging
driven-over-after = Driven over after { $days }
days = Days
not-worked-out = not worked out
lawn-to-cut = Lawn to be cut
boundary = Boundary
guide-runs = Guide runs
guide-runs-none = none
out-of-reach-title = Out of reach
part-out-of-reach = { $area }, { $why }: { $middle }
head-free-machine = Free for the machine
head-behind-it = Lawn behind it
head-changes = Changes of side a day
head-share = Its share of the driving
head-nine-tenths = Nine tenths of it driven over
weak-places = Weak places, and why
would-mend = What would mend them
as-planned = as planned
assumed-and-beware = What is assumed, and what to beware of
foot-forecast = A forecast from simulated runs: how real machines differ shows in the first days of logs.

## page: morning

title-morning = Gardens to visit after { $night }
morning-after = The morning after { $night }
gardens-to-visit = Gardens to visit
count-muted = { $count } muted.
gardens-in-order = Gardens, the one to which a visit brings most first
head-garden = Garden
head-last-nights = Last 15 nights
head-wrong = What is wrong
head-since = Since
head-bring = What to bring
head-gain = Brings
and-count-more = and { $count } more
known-bracket = (known)
open-for = Open for { $days }, as of the night of { $night }.
lawn-of = Lawn { $area }.
driven-in-last = { $percent } of it driven over in the last { $days }; promised are { $promised }.
known-said = Known: { $said }
known = Known
head-night = Night
head-missed = Missed
head-driving = Driving
head-stuck = Stuck
head-silent = Silent
nights-of = Nights of { $name }
mended = Mended
what-failed = What failed
failures = Failures
head-what = What
visit-brings = A visit brings so much lawn that would be driven over each night, and is not.

## terminal: labels of rows (row-...), at most 12 letters each, row-by-lawn, row-used, row-skipped and row-note at most 10;
## heads of columns (col-...), at most 7, col-id at most 3
# Cut short what is too long, as newspapers do: a label stands beside its text.

row-driven-over = Driven over
row-before = Before
row-after = After
row-difference = Difference
row-pockets = Pockets
row-beware = Beware
# $id is G1 or M12.
row-change = Change { $id }
row-by-lawn = by lawn
row-asked-about = Asked about
row-missed = Missed
plan-answer = Lawn to be cut: { $area }, { $edge } of edge; zones and obstacles are taken out.
forecast-hours = At { $hours } of work a day, from { $runs } simulated runs.
col-role = role
col-name = name
col-length = length
no-faults = No faults.
row-plan-faults = To look at
col-id = id
col-area = area
col-widest = widest
col-where-why = where, and why
row-not-yet = Not yet
row-stuck-spots = Stuck spots
none-seen = none seen
row-pattern = Pattern
row-promise = Promise
row-from = From
row-in-the-dark = In the dark
before = Before
after = After
row-ground = Ground
col-before = before
col-after = after
col-became = what became of it
no-pockets = none on either side
row-where = Where
row-last = Last
row-usually = Usually
row-used = Used
row-skipped = Skipped
skipped-nothing = nothing
row-note = Note
in-line = (line { $count })
row-time = Time
row-fixes = Fixes
row-hours = Hours
row-silences = Silences
silences-none = none
row-quality = Quality
row-hdop = HDOP
row-repeats = Repeats
row-error = Error
row-extent = Extent
row-reference = Reference

## Numbers and lists

unknown = unknown
under-percent = under { $percent }
over-percent = over { $percent }
interval = 90 % interval { $low } to { $high }
no-interval = no interval
range = { $low } to { $high }
# Two parts of a list, or the list so far and its next part.
list = { $before }, { $next }
list-apart = { $before }; { $next }
way-home-row = { $times } { $along } ({ $time })
# Two lengths of tape meet on one side of the line between their ends.
tape-from = { $length } from { $from }
tape-side = { $tape }, on their { $eighth ->
    [0] northern
    [1] north-eastern
    [2] eastern
    [3] south-eastern
    [4] southern
    [5] south-western
    [6] western
   *[7] north-western
} side
position-metres = { $east } east, { $north } north of the origin
fixes-poor = { $count } of poor quality
fixes-jumped = { $count ->
    [one] 1 jump
   *[other] { $count } jumps
}
fixes-carried = { $count } while carried
fixes-used-of = { $used } of { $count ->
    [one] 1 fix
   *[other] { $count } fixes
} read (left out: { $list })
# A time on the clock: the year has no mark between thousands.
date-time = { $day } { $month ->
    [1] January
    [2] February
    [3] March
    [4] April
    [5] May
    [6] June
    [7] July
    [8] August
    [9] September
    [10] October
    [11] November
   *[12] December
} { $year }, { $hour }:{ $minute }

## Words for before and after

more-than-luck = more than position errors and luck explain
luck-may-explain = position errors and luck alone may explain it
count-pocket-change = { $value ->
    [mended] { $count } mended
    [better] { $count } better
    [new] { $count } new
   *[unchanged] { $count } unchanged
}
pocket-sum = { $pockets }: { $list }
nothing-to-hold-against = nothing to hold it against
prediction-holds = the prediction holds
prediction-fails = the prediction does not hold

## The log beside a surveyed path; columns are narrow

error-mean = mean
error-rms = rms
error-95 = 95 %
error-largest = largest
error-logged = logged
error-located = located
error-cross-track = cross-track
error-along-track = along-track
error-timing = timing
error-pass-to-pass = pass to pass
reference-head = { $length } of { $name }, { $fixes } compared{ $beside ->
    [0] { "" }
   *[other] ; { $beside } more than { $distance } beside it left out
}
reference-untimed = The surveyed path has no times: errors along it and in time cannot be told.

## Why a line of a log was skipped

skip-reason = { $value ->
    [bad_checksum] checksum does not fit
    [not_a_position] carries no position
    [not_of_the_format] not of the format
    [no_fix] receiver had no fix
    [no_time] position without time
    [no_date] time of day without date
    [malformed] malformed field
    [not_finite] not a finite number
    [out_of_range] out of range
    [null_island] latitude 0, longitude 0
    [pole] latitude 90 while searching
    [time_reversed] time runs backwards
    [duplicate_time] same time twice
    [duplicate_epoch] same epoch twice
    [truncated] cut off at the end
    [same_log_twice] same log under two names
    [too_long] longer than the limit
   *[implausible] implausible position
}

## page: drawings and hours

map-north-up = Map of the lawn, north up
map-of-lawn = Map of the lawn
map-before = Map before
map-after = Map after
ground-visits = visits
ground-waits = revisit interval
ground-overdue = overdue
never = never
driving = driving
driving-along = of it along a guide or the boundary
standing-turning = standing elsewhere, turning
activity-driving = driving
activity-turning = turning
activity-reversing = backwards
activity-transit = on its way out or home
activity-standing = standing
activity-station = at the station
activity-carried = carried
activity-silent = without fixes
night-number = night { $number }
nights-drawing = Hours by activity, one row a night; the table below has the same figures
axis-hours = hours
driven-that-night = driven over that night
so-far = so far
lawn-after = Lawn after { $hours }
still-gained = { $percent }, +{ $points } points
plot-over-time = Part of the lawn driven over against hours of driving
axis-lawn-percent = lawn driven over, %
axis-hours-driving = hours of driving
plot-histogram = Part of the lawn by how often it was driven over
axis-part-percent = part of the lawn, %
axis-times = times driven over
plot-gains = Part of the pocket driven over: { $list }
gain-row = { $label } { $fraction }
axis-pocket-percent = pocket driven over, %
plot-waits = Waits between two visits: { $list }
wait-under = { $part } under { $hours }
wait-half = half
wait-nine-ten = 9 in 10
wait-99 = 99 in 100
wait-allowed = allowed
axis-waits = hours between two visits

## map

key-missed = missed: luck does not explain it
key-not-yet = not yet: luck still explains it
key-unseen = unseen: no evidence
key-stuck = stuck spot: time lost
key-worn = worn line
key-suggested = suggested change
key-tape = tape distance
key-lines = driven lines
key-lie = passages, starts, faults of the plan
key-strays = strays, possible stops
key-guide = guide run
key-exclusion = exclusion zone
key-obstacle = obstacle
key-boundary = boundary
nothing-to-draw = No outline and no path to draw.
picture-line = Driven over: { $percent } of { $lawn }. Missed: { $pockets }, { $missed }.
picture-not-counted = No cutting width was given, so nothing was counted.
picture-foot = Drawn from logged positions. Driven over does not prove that grass was cut.
# One letter: north.
north-letter = N
second-axis = second axis
# Names of marks, read aloud: an id, what it is, how large.
mark-missed = { $id }, missed, { $area }
mark-not-yet = { $id }, not yet, { $area }
mark-unseen = { $id }, without evidence, { $area }
mark-worn = { $id }, worn line, { $length }
mark-suggested = { $id }, suggested: { $change }
mark-stuck = { $id }, stuck spot, { $time } lost
mark-island = { $id }, island, { $area }
mark-passage = { $id }, passage, { $length } wide
mark-in-no-plan = { $count ->
    [one] { $id }, stands in no plan, 1 turn at it
   *[other] { $id }, stands in no plan, { $count } turns at it
}
mark-stray = { $id }, stray, { $length } outside
mark-compared = { $id }, { $percent } driven over
mark-station = station

## terminal: the lawn in characters, files

chart-key = { $bare } not driven over, { $one } to { $first }, { $two } to { $second }, { $three } to { $third }, { $four } more times; { $missed } missed, { $not_yet } not yet, { $stuck } stuck spot, { $station } station; a character is { $length } wide{ $north ->
    [up] , north is up
   *[unknown] { "" }
}
row-written = Written

## Why a file is left out

file-elsewhere = the command makes it, from findings.json with tussock report
file-tells-where = it would tell where the garden is
file-local-metres = positions are in local metres, without geographic coordinates
file-not-counted = nothing was counted without a cutting width
file-not-driven = nothing was driven

## morning: gardens

garden-gain = { $garden }: { $area } a night to gain
failed = Failed
# What an alarm says. $why is a sentence of the store, in English.
alarm-less-visited = { $found } of the lawn driven over where { $usual } are usual in as many hours, since { $since }.
alarm-hours = { $value ->
    [lost_hours] { $found } of driving where { $usual } are usual, since { $since }.
   *[silences] { $found } without positions where { $usual } are usual, since { $since }.
}
alarm-receiver-worse = Positions err by { $found } where { $usual } are usual, since { $since }.
alarm-stuck-spot = Stuck at one place since { $since }, { $nights ->
    [one] 1 night
   *[other] { $nights } nights
}, { $found } in the last: { $why }
alarm-missed-pocket = Missed since { $since }, { $nights ->
    [one] 1 night
   *[other] { $nights } nights
}: { $found }. { $why }
alarm-promise = { $found } of the lawn driven over within { $count ->
    [one] 1 day
   *[other] { $count } days
} where { $usual } are promised, since { $since }.
alarm-absent = { $machine ->
    [none] No log since { $since }: { $nights } expected nights.
   *[other] No log of { $machine } since { $since }: { $nights } expected nights.
}

## local page: one line each; what is in braces stays as it is

page-what-to-do = What to do
page-open = Open
page-see = See
page-stop = Stop
page-compare = Compare
page-save = Save
page-no-script = This page works with JavaScript, which is switched off here.
page-how-far = How far the work is
page-open-title = What did the mower leave standing?
page-open-lead = Choose the positions that it logged, drop them anywhere on this page, or paste them. Nothing leaves this device: the page forbids every connection, and works without a network.
page-logs = Logs
page-logs-means = GPX, NMEA 0183, CSV, KML and others, packed with gzip or not; of one garden, one file or several. A saved findings.json opens as it is.
page-choose-logs = Choose logs
page-paste = Paste a log
page-paste-text = Text of the log
page-paste-take = Take this text
page-plan = Plan
page-plan-if = if there is one
page-plan-means = The lawn, zones, obstacles, guide runs and the station, as GeoJSON. Without it the outline is drawn from the drive.
page-choose-plan = Choose a plan
page-machine = Machine
page-width = Width of the cutting disc
page-cm = cm
page-width-means = Left empty, the settings say it; where they do not, the answer is given for several widths.
page-choose-settings = Choose settings
page-suggest = Try changes and suggest the best (takes longer)
page-find = Find what was missed
page-demo = Take the invented garden
page-kept = Kept on this device
page-forget = Delete all that is kept
page-cautions = Stop and disable the machine before you touch it: the blades move. Fitting a logger, digging and work on the station have cautions of their own, on the page that you get.
page-page = The page
page-hand-over = The page to hand over
page-ask-title = Ask about a place
page-begin = Begin the page with this answer
page-type-place = Type a place
page-or-tap = Or tap it on the map.
page-place = Place
page-typed-in = typed in
page-metres = metres east, north
page-degrees = degrees, latitude first
page-such-as = Such as 4.5,-2 or 53.86006,12.42021. Metres count from the origin of the findings.
page-said = What was said of it
page-ask = Ask
page-compare-title = What did a change bring?
page-before = Before
page-after = After
page-logs-before = Choose logs from before
page-the-plan = Choose the plan
page-logs-after = Choose logs from after
page-plan-changed = Choose the plan, if it changed
page-compare-means = Each side takes logs, or one findings.json. The cutting width and settings are those under Open.
page-print = Print the page
page-private = Without place, names and dates
page-keep-title = Keep on this device
page-keep-means = Nothing is kept unless you ask. What is kept are the findings, the plan and the settings, in this browser; who uses it can open them, and so can other pages that are opened from this device. Save files instead where others use it.
page-garden-name = Name of the garden
page-keep = Keep
page-drop = Drop logs, a plan or settings
page-no-worker = the worker cannot run here: { $reason }
page-not-let = this browser does not let it
page-broke-off = the work broke off: { $why }
page-broke-off-hint = this is a fault of the tool, or the device has no memory left; your files are as they were
page-take-out = take out
page-take-out-file = take out { $file }
page-hint = hint: { $hint }
page-seconds = { $stage }, { $seconds } s
page-starting = starting
page-stopped = stopped
page-reading = reading { $file }
page-unreadable = { $file }: cannot be read: { $reason }
page-choose-again = choose it again
page-side-empty = a side has no log, expected logs or findings.json on both
page-no-log = no log is given, expected a log (GPX, NMEA 0183, CSV, ...) or findings.json
page-no-log-hint = choose files, drop them on this page, or take the invented garden
page-file-page = the page to hand over
page-file-findings = every number; opens here again
page-file-geojson = everything with a place, for maps
page-file-gpx = guides you to the pockets
page-file-comparison = every number
page-no-file = no { $file }: { $why }
page-keeps-nothing = this browser keeps nothing for this page: { $reason }
page-no-reason = no reason given
page-save-instead = save findings.json instead
page-open-kept = open
page-open-garden = open { $garden }
page-is-kept = { $garden } is kept
page-cannot-delete = it cannot be deleted: { $reason }
page-clear-data = clear the data of this page in the settings of the browser
# The name of this language in itself: English, Deutsch, ...
page-this-language = English
page-language = Language
page-remember = Remember on this device
page-stage-drawing = drawing
page-stage-reading = reading
page-stage-comparing = comparing
page-stage-locating = locating
page-stage-counting = counting
page-stage-calibrating = calibrating
page-stage-diagnosing = diagnosing
page-stage-suggesting = suggesting
