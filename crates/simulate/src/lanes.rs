//! placeholder
use crate::drive::Driver;
pub(crate) fn drive(_driver: &mut Driver<'_>) {}
