#![no_main]

libfuzzer_sys::fuzz_target!(|data: &[u8]| tussock_fuzz::bodies::kml(data));
