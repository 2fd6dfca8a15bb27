//! What fields, parts, plugs, faults and actions were called before, so that a file of an older version is told the new name
//! rather than that its own is unknown.

/// Old name and new one. A new name may stand in several lists; an old one is only told where the new one is known.
const RENAMED: &[(&str, &str)] = &[
    ("pad", "sensor"),
    ("mains", "power_line"),
    ("face", "side"),
    ("word", "password"),
    ("finds_unit", "finds_recorder"),
    ("strip_on", "power_strip_on"),
    ("lead_break", "cable_break"),
    ("unit", "recorder"),
    ("strip", "power_strip"),
    ("strip", "trace"),
    ("lead1", "cable1"),
    ("lead2", "cable2"),
    ("mains_unit", "power_recorder"),
    ("mains_wall", "power_wall"),
    ("data_unit", "data_recorder"),
    ("unit_inlet", "recorder_inlet"),
    ("unit_data", "recorder_data"),
    ("take", "recording"),
    ("hold", "paused"),
    ("clean_stretch", "clean_part"),
    ("open_take", "open_recording"),
    ("tap_pad", "tap_sensor"),
    ("pad_place", "sensor_place"),
    ("pad_face", "sensor_side"),
    ("swap_lead", "swap_cable"),
    ("lead_on_strip", "cable_on_power_strip"),
    ("lead_taut", "cable_taut"),
    ("lead_broken", "cable_broken"),
    ("unit_off", "recorder_off"),
    ("strip_off", "power_strip_off"),
    ("data_lead_out", "data_cable_out"),
    ("mains_lead_out", "power_cord_out"),
    ("pad_out", "sensor_out"),
    ("pad_off_pulp", "sensor_off_pulp"),
    ("pad_upside_down", "sensor_upside_down"),
    ("held", "paused"),
];

/// What to say after a name of an older version, where what it is called now is one of `known`; else nothing.
pub fn now(old: &str, known: &[&str]) -> String {
    let new = RENAMED.iter().find(|(name, new)| *name == old && known.contains(new));
    new.map_or_else(String::new, |(_, new)| format!(", which is called `{new}` now"))
}
