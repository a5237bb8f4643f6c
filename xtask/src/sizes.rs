//! What a first visit downloads.

use std::collections::BTreeMap;
use std::fs;
use std::io::Write;
use std::path::Path;

use anyhow::{Context, Result, ensure};

use crate::precache::loaded;
use crate::uses;

/// Everything the page loads, compressed, in bytes. Asked: 320 KiB. Ceilings stand just above what is reached: they keep the page from growing
/// unseen, and come down with it.
///
/// The wasm is two thirds of it. Measured in November 2026, by size against the time of the mechanics: `opt-level = "s"` for all of it takes 10 % off and
/// costs a quarter; a lower threshold for inlining takes 5 % off and costs a quarter; size for the binding and the drawings alone (taken) takes 2 % off and
/// costs the mechanics nothing; `wasm-opt -Oz` takes 1 % off. In December schema 2 with its migration, the proof against the tape and motors as tables brought
/// 32 kB more. What is left by room, of 1,097 kB of code before compression: the reader of jobs 150,
/// the search 150, drawings and print 110, encoders 80. A second module for the search would have the reader in it again.
const BUDGET_ALL: usize = 484 * 1024;
/// Files and bytes until the first verdict: of the page (asked: 15, 210 KiB) and of the element in a shop's page.
const BUDGET_USES: [(&str, usize, usize); 2] = [(uses::PAGE, 13, 397 * 1024), (uses::ELEMENT, 8, 388 * 1024)];
/// The wasm alone. Asked: 190 KiB.
const BUDGET_WASM: usize = 314 * 1024;

/// Prints the table for a built page; an error over budget.
pub fn print(dist: &Path) -> Result<()> {
    let (table, verdict) = table(dist)?;
    print!("{table}");
    verdict
}

/// The tables, by file and by use, and whether the budgets hold. The service worker loads all of it, so that every file counts.
pub fn table(dist: &Path) -> Result<(String, Result<()>)> {
    let mut text = format!("{:>10} {:>10}  file\n", "bytes", "brotli");
    let (mut plain, mut all, mut wasm) = (0, 0, 0);
    let mut by_name = BTreeMap::new();
    for (name, path) in loaded(dist).context("build the page first: cargo xtask build")? {
        let content = fs::read(&path)?;
        let sent = sent(&content)?;
        text += &format!("{:>10} {sent:>10}  {name}\n", content.len());
        plain += content.len();
        all += sent;
        if name.ends_with(".wasm") {
            wasm += sent;
        }
        by_name.insert(name, sent);
    }
    text += &format!("{plain:>10} {all:>10}  in all (budget {BUDGET_ALL}); wasm {wasm} (budget {BUDGET_WASM})\n");
    text += &format!("\n{:>10} {:>10}  use (most)\n", "requests", "brotli");
    let mut each = Ok(());
    for (use_, files) in uses::uses(dist)? {
        let sent: usize = files.iter().filter_map(|name| by_name.get(name)).sum();
        let most = BUDGET_USES.iter().find(|(name, ..)| *name == use_).map(|(_, requests, bytes)| (*requests, *bytes));
        let told = most.map_or_else(String::new, |(requests, bytes)| format!(" ({requests}, {bytes})"));
        text += &format!("{:>10} {sent:>10}  {use_}{told}\n", files.len());
        if let Some(most) = most {
            each = each.and(within(use_, (files.len(), sent), most));
        }
    }
    Ok((text, check(all, wasm).and(each)))
}

fn within(use_: &str, (requests, sent): (usize, usize), (most_requests, most_sent): (usize, usize)) -> Result<()> {
    ensure!(requests <= most_requests, "{use_}: {requests} files, of {most_requests} at most");
    ensure!(sent <= most_sent, "{use_}: {sent} bytes, of {most_sent} at most");
    Ok(())
}

fn check(all: usize, wasm: usize) -> Result<()> {
    ensure!(wasm > 0, "there is no wasm in the build");
    ensure!(wasm <= BUDGET_WASM, "the wasm is {} bytes over its budget", wasm - BUDGET_WASM);
    ensure!(all <= BUDGET_ALL, "the page is {} bytes over its budget", all - BUDGET_ALL);
    Ok(())
}

/// Bytes on the line: a host sends what compression does not shrink (pictures) as it is.
fn sent(content: &[u8]) -> Result<usize> {
    Ok(packed(content, 11)?.len().min(content.len()))
}

/// A content as it is packed for the way; 11 packs it smallest, and slowest.
pub fn packed(content: &[u8], quality: u32) -> Result<Vec<u8>> {
    let mut packed = Vec::new();
    let mut writer = brotli::CompressorWriter::new(&mut packed, 4096, quality, 22);
    writer.write_all(content)?;
    drop(writer);
    Ok(packed)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn compressible_shrinks_and_noise_does_not_grow() {
        assert!(sent(&[b'a'; 10_000]).unwrap() < 100);
        // A multiplicative hash of the index: no pattern that a compressor would find.
        let noise: Vec<u8> =
            (0..1000u32).map(|i| (i.wrapping_mul(2_654_435_761).wrapping_mul(i) >> 24) as u8).collect();
        assert!(sent(&noise).unwrap() <= noise.len());
    }

    #[test]
    fn budgets_are_limits_and_a_missing_wasm_is_a_fault() {
        assert!(check(BUDGET_ALL, BUDGET_WASM).is_ok());
        assert!(check(BUDGET_ALL + 1, BUDGET_WASM).is_err());
        assert!(check(BUDGET_ALL, BUDGET_WASM + 1).is_err());
        assert!(check(BUDGET_ALL, 0).is_err());
        assert!(within("a use", (2, 10), (2, 10)).is_ok());
        assert!(within("a use", (3, 10), (2, 10)).is_err() && within("a use", (2, 11), (2, 10)).is_err());
    }
}
