//! The cautions, each where the hurt can happen, once, in a sentence.

use super::texts::texts;

texts! {
    /// Cautions.
    Cautions, CAUTIONS {
        glass: "Over-pressured glass bursts without warning. Use sound bottles made for pressure, keep them cool, and follow the bottle maker's sheet where there is one.",
        hot: "Hot wort scalds within seconds and cracks glass. Never pour it into a glass vessel.",
        water: "Use boiled and cooled or sealed bottled water. Shop ice goes round the pot, not in it.",
        strength: "For your own use: not for a label in trade, duty, driving or health. Check your local law; for adults of legal age.",
        tally: "Some places limit what a household may brew in a year, or want to be told. Check your local law; home-made beer is not for sale.",
        gas: "Carbon dioxide gathers in chest freezers, cupboards and small cellars: open, wait, and never lean in.",
        cleaner: "Never mix bleach with acid, vinegar or ammonia. Follow the label of every cleaner.",
        glass_tool: "Hydrometers and glass vessels break when wet or shocked; a hot sample can crack them.",
    } says {}
}
