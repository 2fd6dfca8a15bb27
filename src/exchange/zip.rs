//! Several files as one, stored or with parts that somebody else has packed: for handing a WFDB record out as one download, and taking such a
//! download in again. (The layout of ZIP: PKWARE's APPNOTE, sections 4.3.7, 4.3.12, 4.3.16, from memory.)

use super::NamedFile;

const LOCAL: u32 = 0x0403_4b50;
const CENTRAL: u32 = 0x0201_4b50;
const END: u32 = 0x0605_4b50;
/// The first day that the format can tell, 1 January 1980: no date of its own goes in.
const DATE: u16 = 0x21;

/// The check sum of the format (CRC-32 of IEEE 802.3), bit by bit.
fn crc(bytes: &[u8]) -> u32 {
    let mut crc = u32::MAX;
    for byte in bytes {
        crc ^= u32::from(*byte);
        for _ in 0..8 {
            crc = if crc & 1 == 1 { crc >> 1 ^ 0xedb8_8320 } else { crc >> 1 };
        }
    }
    !crc
}

/// A file for an archive.
#[derive(Clone, Copy, Debug)]
pub struct Item<'a> {
    /// Its path.
    pub name: &'a str,
    /// What it holds.
    pub bytes: &'a [u8],
    /// The same as a raw deflate (RFC 1951), if somebody has packed it; stored as it is otherwise.
    pub packed: Option<&'a [u8]>,
}

/// The files as one; `None` when they do not fit into the format, which counts bytes in 32 bits.
pub fn store(files: &[NamedFile]) -> Option<Vec<u8>> {
    let items: Vec<Item> = files.iter().map(|(name, bytes)| Item { name, bytes, packed: None }).collect();
    write(&items)
}

/// The files as one, some of them packed; `None` as for [`store`].
pub fn write(files: &[Item]) -> Option<Vec<u8>> {
    let mut out: Vec<u8> = Vec::new();
    let mut list: Vec<u8> = Vec::new();
    for Item { name, bytes, packed } in files {
        let body = packed.unwrap_or(bytes);
        let (at, size) = (u32::try_from(out.len()).ok()?, u32::try_from(bytes.len()).ok()?);
        let within = u32::try_from(body.len()).ok()?;
        // Deflate is method 8 and asks for version 2.0 of the format.
        let (version, method): (u16, u16) = if packed.is_some() { (20, 8) } else { (10, 0) };
        let length = u16::try_from(name.len()).ok()?;
        // Version, names in UTF-8, method, no time, the date, sum, both sizes, length of the name, no extras.
        let mut told: Vec<u8> = Vec::new();
        for short in [version, 0x0800, method, 0, DATE] {
            told.extend(u16::to_le_bytes(short));
        }
        for long in [crc(bytes), within, size] {
            told.extend(long.to_le_bytes());
        }
        told.extend(length.to_le_bytes());
        told.extend([0, 0]);
        out.extend(LOCAL.to_le_bytes());
        out.extend(&told);
        out.extend(name.bytes());
        out.extend(body);
        list.extend(CENTRAL.to_le_bytes());
        list.extend(version.to_le_bytes());
        list.extend(&told);
        // No remark, first disk, no attributes.
        list.extend([0; 10]);
        list.extend(at.to_le_bytes());
        list.extend(name.bytes());
    }
    let (at, size) = (u32::try_from(out.len()).ok()?, u32::try_from(list.len()).ok()?);
    let count = u16::try_from(files.len()).ok()?;
    out.extend(list);
    out.extend(END.to_le_bytes());
    out.extend([0; 4]);
    for short in [count, count] {
        out.extend(short.to_le_bytes());
    }
    for long in [size, at] {
        out.extend(long.to_le_bytes());
    }
    out.extend([0; 2]);
    Some(out)
}

/// Most files in an archive that is read: a record has a few.
pub const MOST_FILES: usize = 64;

/// The stored files of an archive, in its order; `None` for what is no archive, is damaged, holds a packed file, or more than
/// [`MOST_FILES`].
pub fn unstore(bytes: &[u8]) -> Option<Vec<NamedFile>> {
    let short = |at: usize| bytes.get(at..at + 2).map(|b| usize::from(u16::from_le_bytes([b[0], b[1]])));
    let long = |at: usize| bytes.get(at..at + 4).map(|b| u32::from_le_bytes([b[0], b[1], b[2], b[3]]));
    let mut files = Vec::new();
    let mut at = 0;
    while long(at)? == LOCAL {
        // A size of its own behind the data (bit 3) would have to be searched for.
        let (flags, packing) = (short(at + 6)?, short(at + 8)?);
        let (sum, size) = (long(at + 14)?, long(at + 22)? as usize);
        let (name, extra) = (short(at + 26)?, short(at + 28)?);
        let start = at + 30 + name + extra;
        let data = bytes.get(start..start.checked_add(size)?)?;
        if packing != 0 || flags & 8 != 0 || crc(data) != sum {
            return None;
        }
        if files.len() == MOST_FILES {
            return None;
        }
        let name = String::from_utf8_lossy(bytes.get(at + 30..at + 30 + name)?).into_owned();
        if !name.ends_with('/') {
            files.push((name, data.to_vec()));
        }
        at = start + size;
    }
    (!files.is_empty() && long(at)? == CENTRAL).then_some(files)
}

/// Whether a file begins as an archive does.
pub fn is_zip(bytes: &[u8]) -> bool {
    bytes.starts_with(&LOCAL.to_le_bytes())
}
