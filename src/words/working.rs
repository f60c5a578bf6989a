//! The words of a working: what each step is, and where its rule comes from.

use super::texts::texts;
use crate::science::{Source, Term};

texts! {
    /// What a working says.
    WorkingWords, WORKING {
        how: "How this was worked out",
        went_in: "What went in",
        step_by_step: "Step by step",
        doubts: "What the ± is made of",
        one_deviation: "± is one standard deviation: the true value lies within it about two times in three.",
    } says {
        term: fn(Term) -> &'static str = term,
        source: fn(Source) -> &'static str = source,
    }
}

/// What a step is about.
const fn term(term: Term) -> &'static str {
    match term {
        Term::AirExchange => "Changes of air",
        Term::ExpectedEnd => "Expected end",
        Term::ExtractFermented => "Extract fermented",
        Term::ExtractMass => "Extract in all",
        Term::ExtractShare => "Share of extract",
        Term::ForecastEnd => "End, with the readings",
        Term::GasBusiestDay => "Gas in the busiest day",
        Term::GasInRoom => "Carbon dioxide in the room",
        Term::GasMade => "Gas in all",
        Term::GravityGap => "Sample less ingredients",
        Term::HeatLoss => "Heat lost for each degree",
        Term::HeatRate => "Heat made",
        Term::IngredientMass => "Weighed in",
        Term::OxygenByShaking => "By shaking",
        Term::OxygenInWater => "Oxygen in water",
        Term::OxygenInWort => "Oxygen in this wort",
        Term::RiseOverRoom => "Over the room",
        Term::RoomSize => "Room",
        Term::RoomTemperature => "Room temperature",
        Term::AirPressure => "Air pressure there",
        Term::AlcoholByMass => "Alcohol by mass",
        Term::AlcoholContent => "Alcohol by volume",
        Term::AlcoholDifference => "What the alcohol changes",
        Term::AmountOfYeastFromCells => "Yeast by cell count",
        Term::AmountOfYeastFromMaker => "Yeast by the makers' dose",
        Term::ApparentAttenuation => "Apparent attenuation",
        Term::ApparentExtract => "Apparent extract",
        Term::BathTemperature => "Bath or room",
        Term::BeerVolume => "Volume",
        Term::BlendTemperature => "Temperature of the blend",
        Term::BottleHeadspace => "Headspace",
        Term::CarbonDioxideAlreadyIn => "CO₂ already in",
        Term::CarbonDioxideFromPriming => "CO₂ from the sugar",
        Term::CarbonDioxideStillToCome => "CO₂ that may still come",
        Term::CarbonDioxideTarget => "Target",
        Term::CarbonDioxideToAdd => "CO₂ to add",
        Term::CarbonDioxideTotal => "CO₂ in all",
        Term::CommonRuleStrength => "By the common multiplier",
        Term::CoolingRate => "Rate of cooling",
        Term::CorrectedGravity => "Gravity at 20 °C",
        Term::CorrectedInstrumentReading => "Reading, instrument's fault off",
        Term::DutyTableStrength => "By the UK duty table",
        Term::FinalGravity => "Gravity now",
        Term::FoamOrGas => "Gas on the bulb",
        Term::GravityAtReference => "Gravity at the instrument's temperature",
        Term::HeadspaceAir => "Air shut in",
        Term::HeatOfParts => "Heat capacity",
        Term::HeightAboveSea => "Height above the sea",
        Term::HistoryOfTheBeer => "Time in the bottle",
        Term::IceMass => "Ice",
        Term::InstrumentOffset => "Added for the instrument's fault",
        Term::InstrumentReference => "Instrument made for",
        Term::LiquidDensity => "Density of the sample",
        Term::ModelError => "The formula itself",
        Term::OriginalExtract => "Original extract",
        Term::OriginalGravity => "Gravity at the start",
        Term::PlainCorrection => "Corrected as if no alcohol were in it",
        Term::PointsLeft => "Fall",
        Term::PressureOverOutside => "Pressure over the air outside",
        Term::PrimingSugar => "Sugar",
        Term::ReadingError => "Reading",
        Term::ReadingsUsed => "Readings it stands on",
        Term::RealAttenuation => "Real attenuation",
        Term::RealExtract => "Real extract",
        Term::RefractometerShows => "Refractometer shows",
        Term::SampleTemperature => "Sample temperature",
        Term::Scale => "Reading the scale",
        Term::SpreadOfRules => "The rules differ",
        Term::SugarPerVolume => "Sugar for one volume",
        Term::SugarYield => "Yield of the sugar",
        Term::TargetTemperature => "Range of the yeast",
        Term::TimeBetween => "Time passed",
        Term::VolumeAfter => "Volume after",
        Term::WarmestTemperature => "Temperature",
        Term::WaterToAdd => "Water to add",
        Term::WaterVapour => "Water vapour",
        Term::WortFactor => "Wort factor",
        Term::WortTemperature => "Temperature",
        Term::YeastCells => "Cells wanted",
    }
}

/// Where a rule comes from.
const fn source(source: Source) -> &'static str {
    match source {
        Source::AlcoholFactorTable => {
            "Balling's tables, after F. Eckhardt, Table of alcohol factors (1995/2000)"
        }
        Source::BensonKrause1984 => "Benson and Krause (1984), as in Standard Methods (APHA)",
        Source::HeatBalance => "balance of heat made and lost",
        Source::Niosh => "NIOSH, workplace marks",
        Source::OxfordCompanion => "Oxford Companion to Beer (oxygen)",
        Source::Balling1865 => "Balling's balance (1865)",
        Source::CommonPractice => "common practice, no source",
        Source::IcumsaSps4 => "ICUMSA SPS-4; Bubník and others, Sugar Technologists Manual (1995)",
        Source::Iso1768 => "ISO 1768 (expansion of glass)",
        Source::Iapws => "IAPWS (heat of water and ice)",
        Source::OimlR22 => "OIML R 22 (1975)",
        Source::SpeersQuotient => "Speers and others, J. Am. Soc. Brew. Chem. (532 beers)",
        Source::StandardAtmosphere => "ISO 2533, standard atmosphere",
        Source::SugarHeat => "heat of sugar solutions, common fit",
        Source::Tabarie => "Tabarié's relation with Balling's balance",
        Source::UkDutyTable => "UK duty practice, Notice 226",
        Source::Weiss1974 => "Weiss, Marine Chemistry 2:203 (1974), × 0.96 for beer",
        Source::WeissPrice1980 => "Weiss and Price, Marine Chemistry 8:347 (1980)",
        Source::HenryLaw => "Henry's law with Weiss (1974)",
        Source::NewtonCooling => "Newton's law of cooling",
        Source::MakersDose => "yeast makers' sheets",
        Source::Stoichiometry => "molar masses (IUPAC)",
        Source::LogisticCurve => {
            "Speers, Rogers and Smith, J. Inst. Brew. 109:229 (2003); Fermentation 7(1):13 (2021)"
        }
        Source::WeighedCurves => "Bayes' rule over a grid of curves",
        Source::Propagation => "errors combined in quadrature",
    }
}
