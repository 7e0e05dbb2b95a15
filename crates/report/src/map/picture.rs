//! The map as a picture.
//!
//! The ground is painted pixel by pixel from the squares themselves, so that the renderer needs no decoder for pictures
//! inside pictures; the marks above it are rendered by `resvg`.

use super::{Drawing, Furniture, SHEET_RGB};
use crate::messages::Voice;
use crate::{ReportError, ramp::Rgb};
use resvg::{tiny_skia, usvg};
use std::sync::{Arc, OnceLock};
use tussock_types::Findings;

/// Narrowest picture.
const MIN_PX: u32 = 200;
/// Widest picture.
const MAX_PX: u32 = 8_000;

/// The bundled font, loaded once.
fn fonts() -> Arc<fontdb::Database> {
    static FONTS: OnceLock<Arc<fontdb::Database>> = OnceLock::new();
    let load = || {
        let mut fonts = fontdb::Database::new();
        for font in [dejavu::sans::regular(), dejavu::sans::bold()] {
            fonts.load_font_data(font.to_vec());
        }
        fonts.set_sans_serif_family("DejaVu Sans");
        Arc::new(fonts)
    };
    Arc::clone(FONTS.get_or_init(load))
}

/// The map as PNG, this many pixels wide.
///
/// # Errors
/// [`ReportError::PictureWidth`] for a width under 200 or over 8,000 pixels.
pub fn map_png(findings: &Findings, width_px: u32, voice: Voice) -> Result<Vec<u8>, ReportError> {
    if !(MIN_PX..=MAX_PX).contains(&width_px) {
        return Err(ReportError::PictureWidth {
            width_px,
            min_px: MIN_PX,
            max_px: MAX_PX,
        });
    }
    let failed = |message: &str| ReportError::Picture {
        message: message.to_owned(),
    };
    let drawing = Drawing::of(voice, findings, Furniture::Full);
    let zoom = f64::from(width_px) / drawing.width;
    let height_px = (drawing.height * zoom).ceil().max(1.0) as u32;
    let mut pixmap = tiny_skia::Pixmap::new(width_px, height_px).ok_or_else(|| failed("no memory"))?;
    let rgb = |colour: Rgb| tiny_skia::ColorU8::from_rgba(colour[0], colour[1], colour[2], 255);
    let sheet = rgb(SHEET_RGB).premultiply();
    pixmap.pixels_mut().fill(sheet);
    if let (Some(view), Some(ground)) = (&drawing.view, &drawing.ground) {
        let columns = ground.grid.columns;
        // A square covers many pixels; its colour is worked out once.
        let colours: Vec<_> = (0..ground.grid.cells())
            .map(|square| ground.visit_colour(square).map(rgb))
            .collect();
        for (index, pixel) in pixmap.pixels_mut().iter_mut().enumerate() {
            let x = (index as u32 % width_px) as f64 + 0.5;
            let y = (index as u32 / width_px) as f64 + 0.5;
            let cell = ground.grid.cell_at(view.place(x / zoom, y / zoom));
            if let Some(colour) = cell.and_then(|(column, row)| colours[row * columns + column]) {
                *pixel = colour.premultiply();
            }
        }
    }
    let options = usvg::Options {
        fontdb: fonts(),
        font_family: "DejaVu Sans".to_owned(),
        ..usvg::Options::default()
    };
    let tree = usvg::Tree::from_str(&drawing.marks_svg(), &options)
        .map_err(|error| failed(&crate::words::plain(&error.to_string(), 200)))?;
    let transform = tiny_skia::Transform::from_scale(zoom as f32, zoom as f32);
    resvg::render(&tree, transform, &mut pixmap.as_mut());
    encode(&pixmap).map_err(|error| failed(&error.to_string()))
}

/// The sheet is opaque, so the picture needs no alpha.
fn encode(pixmap: &tiny_skia::Pixmap) -> Result<Vec<u8>, png::EncodingError> {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, pixmap.width(), pixmap.height());
    encoder.set_color(png::ColorType::Rgb);
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_compression(png::Compression::Fast);
    let mut writer = encoder.write_header()?;
    let rgb: Vec<u8> = pixmap
        .data()
        .chunks_exact(4)
        .flat_map(|pixel| [pixel[0], pixel[1], pixel[2]])
        .collect();
    writer.write_image_data(&rgb)?;
    writer.finish()?;
    Ok(bytes)
}
