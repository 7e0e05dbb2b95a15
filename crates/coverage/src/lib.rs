//! The count: swath raster, visits, intervals, pockets.
