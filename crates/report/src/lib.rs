//! The windows: terminal, HTML, picture, GeoJSON, GPX, GeoParquet, from findings alone.
