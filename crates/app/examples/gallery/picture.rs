//! A picture of a page: read, cut, thinned to few colours, written small.

use color_quant::NeuQuant;
use std::error::Error;
use std::fs::File;
use std::io::{BufReader, BufWriter};
use std::path::Path;

/// Colours of a page; ours have few.
const COLOURS: usize = 64;
/// How finely the colours are found (1 finest to 30).
const CARE: i32 = 3;
/// By how much a channel may differ and still be the same colour (of 255).
const SAME: u8 = 24;

/// Opaque pixels, four bytes each.
pub(crate) struct Picture {
    wide: u32,
    high: u32,
    rgba: Vec<u8>,
}

impl Picture {
    /// Reads a PNG file.
    pub(crate) fn read(file: &Path) -> Result<Self, Box<dyn Error>> {
        let mut decoder = png::Decoder::new(BufReader::new(File::open(file)?));
        decoder.set_transformations(
            png::Transformations::normalize_to_color8() | png::Transformations::ALPHA,
        );
        let mut reader = decoder.read_info()?;
        let mut bytes = vec![0; reader.output_buffer_size().ok_or("too large")?];
        let info = reader.next_frame(&mut bytes)?;
        bytes.truncate(info.buffer_size());
        let rgba = match info.color_type {
            png::ColorType::Rgba => bytes,
            png::ColorType::GrayscaleAlpha => {
                bytes.chunks_exact(2).flat_map(|one| [one[0], one[0], one[0], one[1]]).collect()
            }
            other => return Err(format!("pixels of another kind: {other:?}").into()),
        };
        Ok(Self { wide: info.width, high: info.height, rgba })
    }

    /// The upper part, no higher than `most` pixels.
    pub(crate) fn cut(mut self, most: u32) -> Self {
        self.high = self.high.min(most);
        self.rgba.truncate(self.wide as usize * self.high as usize * 4);
        self
    }

    /// As it will look once it is kept.
    pub(crate) fn with_few_colours(&self) -> Self {
        let found = NeuQuant::new(CARE, COLOURS, &self.rgba);
        let mut rgba = self.rgba.clone();
        rgba.chunks_exact_mut(4).for_each(|pixel| found.map_pixel(pixel));
        Self { rgba, ..*self }
    }

    /// The share of pixels that look another way (1); all of them where the sizes differ.
    pub(crate) fn differs_from(&self, other: &Self) -> f64 {
        if (self.wide, self.high) != (other.wide, other.high) {
            return 1.0;
        }
        let pixels = self.rgba.chunks_exact(4).zip(other.rgba.chunks_exact(4));
        let all = pixels.len().max(1) as f64;
        let differ =
            |(a, b): &(&[u8], &[u8])| a.iter().zip(*b).any(|(a, b)| a.abs_diff(*b) > SAME);
        pixels.filter(differ).count() as f64 / all
    }

    /// Writes it as a PNG file with a table of colours.
    pub(crate) fn write(&self, file: &Path) -> Result<(), Box<dyn Error>> {
        let found = NeuQuant::new(CARE, COLOURS, &self.rgba);
        let places: Vec<u8> = self
            .rgba
            .chunks_exact(4)
            .map(|pixel| u8::try_from(found.index_of(pixel)))
            .collect::<Result<_, _>>()?;
        let mut encoder =
            png::Encoder::new(BufWriter::new(File::create(file)?), self.wide, self.high);
        encoder.set_color(png::ColorType::Indexed);
        encoder.set_depth(png::BitDepth::Eight);
        encoder.set_palette(found.color_map_rgb());
        encoder.set_compression(png::Compression::High);
        encoder.set_filter(png::Filter::NoFilter);
        encoder.write_header()?.write_image_data(&places)?;
        Ok(())
    }
}
