//! Files that need each other, by Tarjan's strongly connected components (SIAM J. Comput. 1 (1972) 146), as petgraph has them.

use super::source::Crate;
use petgraph::algo::tarjan_scc;
use petgraph::graphmap::DiGraphMap;

/// Every circle, its files in order.
pub fn of(house: &Crate) -> Vec<Vec<String>> {
    let graph: DiGraphMap<&str, ()> = house.arrows().map(|(from, to, _)| (from, to)).collect();
    let mut circles: Vec<Vec<String>> = tarjan_scc(&graph)
        .into_iter()
        .filter(|files| files.len() > 1)
        .map(|files| {
            let mut files: Vec<String> = files.into_iter().map(str::to_owned).collect();
            files.sort();
            files
        })
        .collect();
    circles.sort();
    circles
}
