//! The words of a working: what each step is, and where its rule comes from.

use crate::science::{Source, Term};

/// What a step is about.
pub const fn term(term: Term) -> &'static str {
    match term {
        Term::AirPressure => "Air pressure there",
        Term::AlcoholByMass => "Alcohol by mass",
        Term::AlcoholContent => "Alcohol by volume",
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
        Term::RealAttenuation => "Real attenuation",
        Term::RealExtract => "Real extract",
        Term::SampleTemperature => "Sample temperature",
        Term::Scale => "Reading the scale",
        Term::SpreadOfRules => "The rules differ",
        Term::SugarPerVolume => "Sugar for one volume",
        Term::SugarYield => "Yield of the sugar",
        Term::TargetTemperature => "Range of the yeast",
        Term::VolumeAfter => "Volume after",
        Term::WarmestTemperature => "Temperature",
        Term::WaterToAdd => "Water to add",
        Term::WaterVapour => "Water vapour",
        Term::WortTemperature => "Temperature",
        Term::YeastCells => "Cells wanted",
    }
}

/// Where a rule comes from.
pub const fn source(source: Source) -> &'static str {
    match source {
        Source::AlcoholFactorTable => {
            "Balling's tables, after F. Eckhardt, Table of alcohol factors (1995/2000)"
        }
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
        Source::Propagation => "errors combined in quadrature",
    }
}
