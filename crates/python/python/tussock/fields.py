"""Fields of results, for type checkers; at run time all of them are records. Written by crates/python/fields.py."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from ._record import Record


class ActivityHours(Record):
    at_station_h: float
    driving_h: float
    transit_h: float
    turning_h: float
    reversing_h: float
    halted_h: float
    carried_h: float
    silent_h: float


class CauseFindings(Record):
    cause: Literal['walled_off', 'narrow_passage', 'edge_band', 'zone_misplaced', 'beyond_stuck_spot', 'too_few_visits', 'too_little_time', 'undetermined']
    rank: int
    certainty_fraction: float | None
    evidence_for: tuple[Said, ...]
    evidence_against: tuple[Said, ...]


class Check(Record):
    check: Literal['fixes_left_out', 'cell_sum', 'as_logged', 'two_roads', 'turns_at_edges', 'drawn_garden', 'halves_of_log', 'silences', 'plan_place', 'shown_ground']
    statistic: float
    expected_low: float | None
    expected_high: float | None
    holds: bool
    consequence: Said | None


class ComplaintFindings(Record):
    lat: float | None
    lon: float | None
    east_m: float
    north_m: float
    said: str | None
    visits: Estimate | None
    last_visit: str | None
    due_h: float | None
    answer: Said | None


class Coverage(Record):
    lawn_m2: float
    reachable_m2: float | None
    visited_m2: float
    missed_m2: float
    not_yet_m2: float
    unseen_m2: float
    sliver_m2: float
    visited_fraction: Estimate
    as_logged_fraction: float
    as_logged_differs: Said | None
    cut_width_m: float
    cell_m: float
    cell_error_fraction: float
    realisations: int
    lawns: tuple[LawnCoverage, ...]


class DarkHours(Record):
    driven_h: float
    sunset: str | None
    dusk: str | None
    dawn: str | None
    sunrise: str | None


class DrawnOutline(Record):
    setback_m: float
    edge_sd_m: float
    islands: tuple[UnlistedIsland, ...]
    unturned: UnturnedEdge | None


class DrivenZone(Record):
    feature: int
    path_m: float


class ErrorLength(Record):
    mean_m: float
    rms_m: float
    p95_m: float
    max_m: float


class ErrorTime(Record):
    mean_s: float
    rms_s: float
    p95_s: float
    max_s: float


class Estimate(Record):
    estimate: float
    low: float | None
    high: float | None


class FitFound(Record):
    is_trusted: bool
    said: Said
    runs: int
    rows: tuple[FitRow, ...]


class FitRow(Record):
    what: Literal['visited_fraction', 'path_m', 'visits_map_correlation', 'leg_m', 'revisit_path_m']
    logged: float
    simulated: Estimate


class FrameFindings(Record):
    origin_lat: float | None
    origin_lon: float | None


class GardenSettings(Record):
    name: str | None
    time_zone: str | None
    remarks: str | None
    language: Literal['en', 'de', 'fr', 'es', 'it', 'nl', 'sv', 'pl'] | None
    units: Literal['metric', 'imperial'] | None


class GeoPoint(Record):
    lat_deg: float
    lon_deg: float


class GeoPolygon(Record):
    rings: tuple[tuple[GeoPoint, ...], ...]


class Grid(Record):
    east_min_m: float
    north_min_m: float
    cell_m: float
    columns: int
    rows: int


class HoursFound(Record):
    driving_h_per_day: float
    working_h_per_day: float
    allowed_h_per_day: float | None
    needed_h_per_day: float | None
    said: Said


class HoursSettings(Record):
    monday: tuple[str, ...] | None
    tuesday: tuple[str, ...] | None
    wednesday: tuple[str, ...] | None
    thursday: tuple[str, ...] | None
    friday: tuple[str, ...] | None
    saturday: tuple[str, ...] | None
    sunday: tuple[str, ...] | None


class InputFindings(Record):
    name: str
    sha256: str
    format: Literal['gpx', 'nmea', 'csv']
    made_by: str | None
    machine: str
    bytes: int
    bytes_used: int
    fixes: int
    skipped: Mapping[str, int]
    skipped_bytes: Mapping[str, int]
    places: tuple[Skipped, ...]
    notices: tuple[Notice, ...]
    resolution_m: float | None


class Installation(Record):
    setback_m: float | None
    passages: tuple[Passage, ...]
    unlisted_obstacles: tuple[UnlistedObstacle, ...]
    out_of_reach: tuple[OutOfReach, ...]
    ways_home: tuple[WayHome, ...]
    outings: OutingsFound | None
    hours: HoursFound | None
    lower_cut: LowerCut | None
    turf: TurfFound | None
    slope: SlopeFound | None


class IntervalQuantiles(Record):
    p50: float | None
    p90: float | None
    p99: float | None


class LawnCoverage(Record):
    name: str
    lawn_m2: float
    visited_fraction: Estimate


class LegLengths(Record):
    median: float
    p90: float


class LimitSettings(Record):
    log_bytes: int
    unpacked_bytes: int
    unpacked_ratio: int
    memory_bytes: int
    line_bytes: int
    attribute_bytes: int
    element_depth: int
    fixes: int
    plan_corners: int
    cells: int
    extent_m: float


class ComplaintSettings(Record):
    at: tuple[float, ...] | None
    at_m: tuple[float, ...] | None
    radius_m: float
    said: str | None


class LogVerdict(Record):
    level: Literal['good', 'limited', 'unusable']
    positions: Literal['good', 'limited', 'unusable']
    duration: Literal['good', 'limited', 'unusable']
    smallest_findable_pocket_m2: float
    smallest_findable_width_m: float
    hours_more_needed: float | None
    advice: Said
    remarks: tuple[Said, ...]


class LowerCut(Record):
    answer: Literal['yes', 'not_yet', 'cannot_tell']
    said: Said


class MachineFindings(Record):
    id: str
    model: Literal['legs', 'arcs', 'lanes', 'spirals', 'as_logged'] | None
    speed_mps: float | None
    turning_radius_m: float | None
    setback_m: float | None
    legs_m: LegLengths | None
    turns: int | None
    trusted: bool | None
    outings: int | None


class MachineSettings(Record):
    cut_width_m: float | None
    cut_width_sd_m: float
    body_width_m: float | None
    track_width_m: float | None
    past_boundary_m: float | None
    cutter_forward_m: float
    antenna_forward_m: float
    antenna_left_m: float
    speed_mps: float | None
    turning_radius_m: float
    cuts_in_transit: bool


class MissedPocket(Record):
    id: str
    area_m2: float
    widest_m: float
    lat: float | None
    lon: float | None
    east_m: float
    north_m: float
    outline: tuple[tuple[Place, ...], ...]
    certainty: float | None
    chance_fraction: float
    visited_fraction: float
    causes: tuple[CauseFindings, ...] | None
    next_look: Said | None
    why: Said
    tape: tuple[Tape, ...]
    suggestion_ids: tuple[str, ...]


class Night(Record):
    date: str | None
    start_s: float
    end_s: float
    hours: ActivityHours
    visited_fraction: float | None
    visited_so_far_fraction: float | None
    dark: DarkHours | None


class NotYetPocket(Record):
    id: str
    area_m2: float
    widest_m: float
    lat: float | None
    lon: float | None
    east_m: float
    north_m: float
    outline: tuple[tuple[Place, ...], ...]
    chance_fraction: float
    hours_to_decide: float | None
    why: Said
    tape: tuple[Tape, ...]


class Notice(Record):
    said: Said
    line: int


class OutOfReach(Record):
    area_m2: float
    east_m: float
    north_m: float
    why: Literal['edge', 'cut_off']


class OutingsFound(Record):
    count: int
    median_out_min: float
    median_charging_min: float | None
    starts: tuple[Place, ...]
    along_guide: int


class OverTime(Record):
    driving_h: tuple[float, ...]
    visited_fraction: tuple[float, ...]
    random_law_fraction: tuple[float, ...]
    exhaustive_fraction: tuple[float, ...]
    efficiency: float | None
    hours_to_95: float | None
    hours_to_99: float | None
    promise: Promise


class Passage(Record):
    id: str
    across: tuple[Place, ...]
    lat: float | None
    lon: float | None
    width_m: float
    free_width_m: float
    length_m: float
    behind_m2: float
    crossings: int | None
    crossings_expected: float | None
    crossings_per_day: float | None
    share_ratio: float | None


class Place(Record):
    east_m: float
    north_m: float


class Plan(Record):
    features: tuple[PlanFeature, ...]


class PlanEdge(Record):
    edge: int
    offset_m: float
    sd_m: float
    line: tuple[Place, ...]


class PlanFeature(Record):
    role: Literal['lawn', 'boundary', 'exclusion', 'obstacle', 'guide', 'station']
    name: str
    index: int
    shape: Record
    radius_m: float | None
    outing_share_fraction: float | None


class PlanFit(Record):
    verdict: Literal['fits', 'moved', 'edges_differ', 'another_garden', 'unknown']
    offset: PlanOffset | None
    edges: tuple[PlanEdge, ...]
    driven_zones: tuple[DrivenZone, ...]
    unlisted_obstacles: tuple[UnlistedObstacle, ...]
    unlisted_islands: tuple[UnlistedIsland, ...]


class PlanOffset(Record):
    east_m: float
    north_m: float
    rotation_deg: float
    about_east_m: float
    about_north_m: float
    sd_m: float


class PocketSettings(Record):
    min_width_m: float
    min_area_m2: float
    new_pass_after_s: float
    stuck_after_s: float


class PositionFindings(Record):
    white_m: float | None
    filtered_m: float | None
    filtered_time_s: float | None
    drift_m: float | None
    drift_time_s: float | None
    tails: float | None
    source: Literal['station_scatter', 'rest_scatter', 'driving_roughness', 'device_card', 'stated', 'receiver_claim', 'dilution_of_precision', 'default']
    steps: tuple[ReceiverStep, ...]
    anchored: bool | None


class PositionSettings(Record):
    max_hdop: float
    max_silence_s: float | None
    max_speed_mps: float
    drift_m: float | None
    drift_time_s: float
    card: str | None
    origin_lat_deg: float | None
    origin_lon_deg: float | None


class PossibleStop(Record):
    east_m: float
    north_m: float
    start_s: float
    most_minutes: float


class Predicted(Record):
    visited_fraction_before: Estimate
    visited_fraction_after: Estimate
    pocket_fraction_before: Estimate
    pocket_fraction_after: Estimate


class Promise(Record):
    verdict: Literal['kept', 'broken', 'cannot_tell']
    probability: float | None


class PromiseSettings(Record):
    visited_fraction: float
    days: float


class ReceiverStep(Record):
    time: str | None
    east_m: float
    north_m: float


class ReferenceErrors(Record):
    cross_track: ErrorLength | None
    along_track: ErrorLength | None
    timing: ErrorTime | None
    pass_to_pass: ErrorLength | None


class ReferenceFindings(Record):
    name: str
    length_m: float
    is_timed: bool
    compared_fixes: int
    beside_fixes: int
    beside_m: float
    halted_fixes: int
    logged: ReferenceErrors
    located: ReferenceErrors


class Revisits(Record):
    median_per_cell: float
    mean_per_cell: float
    histogram: tuple[float, ...]
    gini: float
    interval_h: IntervalQuantiles
    overdue_fraction: float | None


class Rung(Record):
    size_m: float | None
    outing_share_fraction: float | None
    added_h_per_day: float | None
    pocket_fraction_after: Estimate
    lawn_gain_fraction: float | None


class Said(Record):
    code: Literal['positions_right', 'positions_off', 'receiver_jumps', 'error_not_shown', 'fixes_too_rare', 'digits_too_coarse', 'mostly_jumps', 'too_few_fixes', 'not_one_garden', 'fixes_far_too_rare', 'walking_pace', 'walk_round', 'stood_all_the_time', 'drove_too_short', 'drove_too_short_by', 'receiver_jumped', 'receiver_jumped_often', 'receiver_jumps_back', 'stops_not_placed', 'date_too_old', 'positions_bent', 'turns_not_at_edge', 'plan_beside', 'edge_inside', 'edge_outside', 'zone_driven', 'drift_assumed', 'drift_at_most', 'silent_long', 'fixes_left_out', 'no_station', 'claim_too_good', 'rtk_fixed_too_good', 'positions_repeated', 'positions_held', 'drives_at_rest', 'drives_at_rest_shifted', 'calibrated', 'ways_disagree', 'as_logged_silent', 'as_logged_sparse', 'as_logged_spread', 'as_logged_aside', 'not_calibrated_no_width', 'not_calibrated_no_plan', 'not_calibrated_lanes', 'not_calibrated_no_drive', 'not_calibrated_no_run', 'interval_holds_both', 'interval_wider', 'interval_wider_by', 'plan_not_believed', 'legs_unlike', 'shows_wider', 'too_narrow_to_explain', 'gap_too_narrow', 'no_way_in', 'no_way_in_driven', 'turns_before_edge', 'zone_elsewhere', 'zone_elsewhere_towards', 'stuck_on_the_way', 'stuck_on_the_way_past', 'passage_shut', 'something_stands', 'something_may_stand', 'strip_stays', 'strip_stays_turns', 'passage_seldom_found', 'behind_passage_seldom', 'comes_seldom', 'not_shown', 'luck_not_lanes', 'luck_under_thousandth', 'luck_one_in', 'passage_width', 'passage_crossings', 'driven_behind', 'nothing_driven_in', 'cells_near_edge', 'path_in_zone', 'turns_beside', 'stops_on_the_way', 'share_behind', 'crossings_expected', 'turns_in_front', 'turns_around', 'passes_expected', 'strip_shape', 'turns_along', 'path_nearby', 'share_simulated', 'gap_nearly_wide', 'few_turns', 'visits_hidden', 'strip_thin', 'zone_may_be_open', 'also_behind_passage', 'one_outing_matters', 'luck_leaves_such', 'look_decides', 'not_yet', 'not_yet_until', 'hidden_by_silence', 'shown_too_little', 'cause_withheld', 'stuck_near', 'stuck_in_passage', 'stuck_in_passage_near', 'stuck_in_the_open', 'stuck_somewhere', 'lay_guide_run', 'move_zone', 'shrink_zone', 'add_zone', 'work_longer', 'shift_boundary', 'facing_side', 'fit_trusted', 'fit_visits_differ', 'fit_path_differs', 'not_fitted_lanes', 'not_fitted_several_machines', 'not_fitted_few_turns', 'not_fitted_no_legs', 'not_fitted_no_ground', 'not_simulated', 'promise_beyond_hours', 'promise_needs_hours', 'promise_beyond_reach', 'promise_hours_unknown', 'lower_cut_unknown', 'lower_cut', 'lower_cut_places_open', 'lower_cut_unsure', 'grass_log_too_short', 'grass_overdue', 'grass_too_many_passes', 'grass_enough_passes', 'lawn_unknown', 'lawn_more', 'lawn_less', 'lawn_alike', 'pockets_mended', 'pockets_better', 'pockets_new', 'pocket_compared', 'change_decided', 'change_open', 'blades_on_lawn', 'blades_near', 'outline_from_drive', 'plan_fault', 'dig_at_spot', 'dig', 'zone_may_protect', 'hours_by_day', 'driven_in_the_dark', 'beyond_the_line', 'look_before_zone', 'guide_exit_unknown', 'local_codes', 'other_reasons', 'at_equal_hours', 'nights_unknown', 'plan_unsure_before', 'plan_unsure_after', 'place_often', 'place_seldom', 'place_few', 'place_never', 'place_gap', 'place_not_yet', 'place_not_yet_open', 'place_unseen', 'place_is_stuck_spot', 'place_off_lawn', 'place_elsewhere', 'place_beyond_outline', 'place_in_island', 'place_cannot_tell', 'place_needs_width', 'place_compared', 'landmark_station', 'landmark_middle', 'landmark_corner_at', 'landmark_corner_nearest', 'landmark_corner', 'landmark_corner_apart', 'time_without_zone', 'time_is_relative', 'gps_time', 'week_rollover_repaired', 'late_fixes', 'newest_first', 'block_out_of_order', 'tracks_overlap', 'times_do_not_fit', 'constant_quality', 'several_machines', 'same_log_twice', 'overlaps_another_log', 'file_not_closed', 'file_damaged', 'line_too_long', 'line_cut', 'attribute_too_long', 'document_type_ignored', 'walk_markup_broken', 'walk_taken_as_lawn', 'walk_positions_skipped', 'walk_name_unknown', 'walk_spikes_cut', 'walk_waits_as_corners', 'walk_pieces_joined', 'walk_overlap_cut', 'walk_gap_closed', 'walk_loops_cut', 'walk_guide_turned']
    text: str


class SetStep(Record):
    id: str
    gained_m2: float
    pockets_fraction_after: Estimate
    visited_fraction_after: Estimate


class Silence(Record):
    start: str | None
    end: str | None
    start_s: float
    duration_s: float
    moved_m: float
    where: Place | None
    bridged_m2: float | None


class SiteVisit(Record):
    who: str | None
    when: str | None
    machine: str | None
    serial: str | None
    done: str | None


class Skipped(Record):
    reason: Literal['bad_checksum', 'not_a_position', 'not_of_the_format', 'no_fix', 'no_time', 'no_date', 'malformed', 'not_finite', 'out_of_range', 'null_island', 'pole', 'time_reversed', 'duplicate_time', 'duplicate_epoch', 'truncated', 'same_log_twice', 'too_long', 'implausible']
    byte_start: int
    byte_end: int
    line: int
    count: int
    excerpt: str


class SlopeFound(Record):
    steep_deg: float
    sd_deg: float
    steepest_at: Place


class Span(Record):
    start: str | None
    end: str | None
    start_unix_s: float | None
    fixes_read: int
    fixes_used: int
    fixes_carried: int
    period_s: float
    fixes_left_out: Mapping[str, int]
    path_m: float
    driving_s: float
    transit_s: float | None
    at_station_s: float | None
    halted_s: float
    carried_s: float | None
    silent_s: float
    speed_mps: float | None
    outings: int | None


class Stray(Record):
    id: str
    start_s: float
    duration_s: float
    farthest_m: float
    east_m: float
    north_m: float
    came_back: bool


class StuckSpot(Record):
    id: str
    lat: float | None
    lon: float | None
    east_m: float
    north_m: float
    radius_m: float
    episodes: int
    minutes: float
    passes_through: int
    certainty: float | None
    why: Said
    approach_deg: float | None


class Suggestion(Record):
    id: str
    kind: Literal['guide_run', 'zone_move', 'zone_shrink', 'zone_add', 'more_hours', 'boundary_shift']
    why: Said
    geometry: tuple[Place, ...]
    feature: int | None
    wire_m: float | None
    outing_share_fraction: float | None
    side: Said | None
    pocket_ids: tuple[str, ...]
    ladder: tuple[Rung, ...] | None
    shift_m: float | None
    added_h_per_day: float | None
    together_with: tuple[str, ...]
    pocket_fraction_in_log: float
    predicted: Predicted
    certainty: float | None
    shown_after_h: float | None
    done_after_h: float | None
    cautions: tuple[Said, ...]


class Tape(Record):
    landmark: Said | None
    distance_m: float
    sd_m: float | None
    from_east_m: float
    from_north_m: float


class TurfFound(Record):
    growth_mm_per_day: float
    growth_source: Literal['settings', 'temperature']
    allowed_interval_h: float
    overdue_fraction: float | None
    said: Said


class TurfSettings(Record):
    cut_height_mm: float | None
    growth_mm_per_day: float | None
    mean_temperature_c: float | None
    grass: Literal['cool', 'warm']


class UnlistedIsland(Record):
    id: str
    lat: float | None
    lon: float | None
    east_m: float
    north_m: float
    area_m2: float
    outline: tuple[Place, ...]


class UnlistedObstacle(Record):
    id: str
    lat: float | None
    lon: float | None
    east_m: float
    north_m: float
    radius_m: float
    turns: int
    presence: Literal['throughout', 'came', 'went', 'came_and_went']


class UnseenGround(Record):
    id: str
    area_m2: float
    outline: tuple[tuple[Place, ...], ...]
    why: Said


class UnturnedEdge(Record):
    lat: float | None
    lon: float | None
    east_m: float
    north_m: float
    length_m: float


class WayHome(Record):
    along: Literal['guide_run', 'boundary', 'straight']
    times: int
    median_min: float


class WidthRow(Record):
    cut_width_m: float
    visited_fraction: Estimate


class WornLine(Record):
    id: str
    line: tuple[Place, ...]
    times_mean: float
    length_m: float
    most_visits: int


class FindingsFields:
    schema_version: Literal[2]
    tool_version: str
    settings: Settings
    inputs: tuple[InputFindings, ...]
    frame: FrameFindings
    log_verdict: LogVerdict
    checks: tuple[Check, ...]
    span: Span
    positions: PositionFindings
    plan_fit: PlanFit | None
    machines: tuple[MachineFindings, ...]
    complaints: tuple[ComplaintFindings, ...]
    visit: SiteVisit | None
    silences: tuple[Silence, ...]
    coverage: Coverage | None
    by_width: tuple[WidthRow, ...] | None
    revisits: Revisits | None
    over_time: OverTime | None
    missed_pockets: tuple[MissedPocket, ...]
    not_yet: tuple[NotYetPocket, ...]
    unseen: tuple[UnseenGround, ...] | None
    stuck_spots: tuple[StuckSpot, ...]
    worn_lines: tuple[WornLine, ...] | None
    strays: tuple[Stray, ...] | None
    possible_stops: tuple[PossibleStop, ...] | None
    installation: Installation | None
    nights: tuple[Night, ...] | None
    fit: FitFound | None
    reference: ReferenceFindings | None
    suggestions: tuple[Suggestion, ...] | None
    change_set: tuple[SetStep, ...]
    cautions: tuple[Said, ...]
    plan: Plan | None
    lawn_outline: tuple[tuple[tuple[Place, ...], ...], ...]
    outline_source: Literal['plan', 'trace']
    drawn_outline: DrawnOutline | None
    driven_lines: tuple[tuple[Place, ...], ...]


class ChangedGround(Record):
    area_m2: float
    middle: Place
    lawn: Literal['before', 'after']


class ComparedPocket(Record):
    id: str
    found: Literal['before', 'after']
    area_m2: float
    middle: Place
    outline: tuple[tuple[Place, ...], ...]
    change: Literal['mended', 'better', 'unchanged', 'new']
    before_fraction: Estimate
    after_fraction: Estimate
    decided_after_nights: int | None
    more_nights: int | None
    said: Said


class ComparedSide(Record):
    names: tuple[str, ...]
    nights: int
    driving_h: float
    visited_fraction: Estimate
    at_equal_hours_fraction: float | None


class Difference(Record):
    visited_fraction: Estimate
    position_sd_fraction: float
    nightly_sd_fraction: float | None
    is_real: bool


class PredictionHeld(Record):
    id: str | None
    built: Literal['suggested', 'otherwise', 'nothing']
    pocket: str
    predicted_fraction: Estimate
    measured_fraction: float
    holds: bool


class ComparisonFields:
    schema_version: Literal[2]
    tool_version: str
    said: tuple[Said, ...]
    common_m2: float
    changed: tuple[ChangedGround, ...]
    before: ComparedSide
    after: ComparedSide
    difference: Difference
    pockets: tuple[ComparedPocket, ...]
    predictions: tuple[PredictionHeld, ...]
    findings_before: Findings | None
    findings_after: Findings | None
    cautions: tuple[Said, ...]


class Inspection(Record):
    schema_version: Literal[2]
    tool_version: str
    inputs: tuple[InputFindings, ...]
    log_verdict: LogVerdict
    checks: tuple[Check, ...]
    span: Span
    positions: PositionFindings
    plan_fit: PlanFit | None
    machines: tuple[MachineFindings, ...]
    silences: tuple[Silence, ...]
    extent_m: tuple[float, float]
    middle: GeoPoint | None
    qualities: tuple[tuple[Literal['unknown', 'autonomous', 'differential', 'precise', 'rtk_fixed', 'rtk_float', 'estimated', 'manual', 'simulated', 'other'], int], ...]
    hdop: tuple[float, float] | None
    repeated_positions: int


class Compared(Record):
    difference: Estimate
    by_garden: tuple[float, ...]
    ahead_fraction: float
    cohen_d: float | None
    cliffs_delta: float
    gardens: int
    nights: int


class Spread(Record):
    position_sd: float
    night_sd: float
    garden_sd: float
    mean: float
    gardens: int
    nights: int


class PatternGuess(Record):
    pattern: Literal['roaming', 'lanes', 'spiral', 'combined', 'undetermined']
    path_m: float
    lanes_fraction: float
    spirals_fraction: float
    rounds_fraction: float
    axis_agreement_fraction: float
    edge_turns: int
    position_sd_m: float
    evidence: tuple[str, ...]


class Measures(Record):
    machines: tuple[str, ...]
    lawn_m2: float
    cut_width_m: float
    path_m: float
    driving_s: float
    span_s: float
    speed_mps: float
    swept_times: float
    visited_fraction: float
    curve: Curve
    efficiency: float | None
    swept_again_fraction: float
    lane_spacing: LaneSpacing | None
    field_work: FieldWork | None
    way: WayShape
    wheels: WheelPasses | None
    clustering: float | None
    evenness: tuple[EvennessPoint, ...]
    visits: VisitSpread
    revisits: RevisitCurve
    turns: TurnLaws | None
    legs: LegLaws | None
    lanes: LaneDirection | None
    edge: EdgeAgainstInterior
    driving_h_to_95: float | None
    driving_h_to_99: float | None


class EdgeAgainstInterior(Record):
    strip_m: float
    edge_m2: float
    edge_visited_fraction: float
    edge_visits: float
    interior_visited_fraction: float
    interior_visits: float


class LaneDirection(Record):
    axis_deg: float
    one_axis: float
    two_axes: float


class LegLaws(Record):
    legs: int
    mean_m: float
    median_m: float
    variation: float
    pi_area_over_perimeter_m: float | None
    exponential: LawFit


class LawFit(Record):
    distance_fraction: float
    probability: float


class TurnLaws(Record):
    turns: int
    mean_size_deg: float
    cosine: LawFit
    uniform: LawFit
    mirror_correlation: float
    about_mirror_sd_deg: float


class RevisitCurve(Record):
    interval_h: tuple[float, ...]
    longer_fraction: tuple[float, ...]
    low_fraction: tuple[float, ...]
    high_fraction: tuple[float, ...]
    finished: int
    unfinished: int
    burstiness: float | None
    median_h: float | None
    random_mean_h: float | None


class VisitSpread(Record):
    mean_visits: float
    fractions: tuple[float, ...]
    gini: float
    gini_of_poisson: float
    dispersion: float | None


class EvennessPoint(Record):
    path_m: float
    gini: float
    gini_of_poisson: float


class WheelPasses(Record):
    track_width_m: float
    tyre_m: float
    mean_passes: float
    trafficked_fraction: float
    repeatedly_fraction: float


class WayShape(Record):
    stretch_m: float
    straightness_fraction: float | None
    turn_angles_deg: tuple[float, ...]
    turn_agreement: float | None


class FieldWork(Record):
    field_s: float
    area_per_h_m2: float
    field_efficiency_fraction: float
    path_per_area_m_per_m2: float


class LaneSpacing(Record):
    pairs: int
    spacing_m: float
    spacing_p10_m: float
    spacing_p90_m: float
    overlap_m: float
    overlap_fraction: float


class Curve(Record):
    axis: Literal['path', 'driving', 'outings']
    path_m: tuple[float, ...]
    driving_h: tuple[float, ...]
    visited_fraction: tuple[float, ...]
    random_law_fraction: tuple[float, ...]
    exhaustive_fraction: tuple[float, ...]
    swept_times: tuple[float, ...]
    outings: tuple[OutingPoint, ...] | None


class OutingPoint(Record):
    outings: int
    driving_h: float
    path_m: float
    visited_fraction: float


class PlanChecked(Record):
    is_sound: bool
    lawn_m2: float
    edge_m: float
    rows: tuple[PlanRow, ...]
    faults: tuple[PlanFault, ...]


class PlanRow(Record):
    role: str
    name: str
    feature: int
    area_m2: float | None
    length_m: float | None


class PlanFault(Record):
    words: str
    feature: int | None
    ring: int | None
    is_fatal: bool


class Truth(Record):
    seed: int
    hours: float
    cut_width_m: float
    cell_m: float
    lawn_m2: float
    visited_m2: float
    visited_fraction: float
    visits_histogram: tuple[int, ...]
    pockets: tuple[TruePocket, ...]
    outings: int
    driven_m: float
    driving_s: float
    at_station_s: float


class TruePocket(Record):
    area_m2: float
    widest_m: float
    east_m: float
    north_m: float


class About(Record):
    version: str
    result_version: str | None
    python: str
    platform: str
    libraries: Mapping[str, str]
    settings: Settings | None
    measures: tuple[MeasureDefined, ...]
    cite: str


class MeasureDefined(Record):
    field: str
    unit: str
    meaning: str
    source: str


class ShiftDone(Record):
    gardens: int
    with_news: int
    logs: int
    nights: int
    failures: int
    expired_rows: int
    files: int


class SettingsFields:
    machine: MachineSettings
    promise: PromiseSettings
    turf: TurfSettings
    hours: HoursSettings
    garden: GardenSettings
    positions: PositionSettings
    pockets: PocketSettings
    limits: LimitSettings
    visit: SiteVisit
    complaint: tuple[ComplaintSettings, ...]


class Settings(SettingsFields, Record):
    pass


class Findings(FindingsFields, Record):
    pass
