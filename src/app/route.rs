//! Where in the page one is, and how the address says so.

use crate::batch::{Id, Stage};

/// A sum on the Bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Sum {
    Gravity,
    Strength,
    Scales,
    Sugar,
    Cooling,
    Yeast,
}

impl Sum {
    /// Every sum, the most used first.
    pub const ALL: [Self; 6] =
        [Self::Gravity, Self::Sugar, Self::Strength, Self::Cooling, Self::Yeast, Self::Scales];

    /// Its name in the address.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Gravity => "gravity",
            Self::Strength => "strength",
            Self::Scales => "scales",
            Self::Sugar => "sugar",
            Self::Cooling => "cooling",
            Self::Yeast => "yeast",
        }
    }
}

/// A place in the page.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Route {
    Now,
    Batches,
    NewBatch,
    Batch(Id, Stage),
    EditBatch(Id),
    Bench,
    Sum(Sum),
    Gear,
    Unknown,
}

/// The name of a stage in the address.
pub const fn stage_name(stage: Stage) -> &'static str {
    match stage {
        Stage::Pitch => "pitch",
        Stage::Watch => "watch",
        Stage::Bottle => "bottle",
        Stage::Open => "open",
    }
}

impl Route {
    /// Reads the part of the address behind `#`.
    pub fn read(hash: &str) -> Self {
        let path = hash.trim_start_matches('#').trim_matches('/');
        let parts: Vec<_> = path.split('/').collect();
        match parts.as_slice() {
            ["" | "now"] => Self::Now,
            ["batches"] => Self::Batches,
            ["batches", "new"] => Self::NewBatch,
            ["batch", id, last] => match (Id::new(*id), *last) {
                (Ok(id), "edit") => Self::EditBatch(id),
                (Ok(id), name) => Stage::ALL
                    .into_iter()
                    .find(|stage| stage_name(*stage) == name)
                    .map_or(Self::Unknown, |stage| Self::Batch(id, stage)),
                _ => Self::Unknown,
            },
            ["bench"] => Self::Bench,
            ["bench", name] => Sum::ALL
                .into_iter()
                .find(|sum| sum.name() == *name)
                .map_or(Self::Unknown, Self::Sum),
            ["gear"] => Self::Gear,
            _ => Self::Unknown,
        }
    }

    /// Writes the address, `#` included.
    pub fn address(&self) -> String {
        match self {
            Self::Now | Self::Unknown => "#/now".to_owned(),
            Self::Batches => "#/batches".to_owned(),
            Self::NewBatch => "#/batches/new".to_owned(),
            Self::Batch(id, stage) => format!("#/batch/{}/{}", id.as_str(), stage_name(*stage)),
            Self::EditBatch(id) => format!("#/batch/{}/edit", id.as_str()),
            Self::Bench => "#/bench".to_owned(),
            Self::Sum(sum) => format!("#/bench/{}", sum.name()),
            Self::Gear => "#/gear".to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_address_leads_back() {
        let id = Id::random([7; 8]);
        let mut routes = vec![
            Route::Now,
            Route::Batches,
            Route::NewBatch,
            Route::EditBatch(id.clone()),
            Route::Bench,
            Route::Gear,
        ];
        routes.extend(Stage::ALL.map(|stage| Route::Batch(id.clone(), stage)));
        routes.extend(Sum::ALL.map(Route::Sum));
        for route in routes {
            assert_eq!(Route::read(&route.address()), route);
        }
        assert_eq!(Route::read("#/batch/../watch"), Route::Unknown);
        assert_eq!(Route::read(""), Route::Now);
    }
}
