//! The plan in plain words, as a master would say it.

use crate::plan_file::PlanFile;
use crate::plan_reasons::{caution, departure, place, reason, um};
use dentwright_plan::{Act, Can, Fulcrum, Lines, Placed, Planned, ReadAgain, Round, Tooling, Why};
use dentwright_sheet::Risk;

/// The whole text.
pub fn words(file: &PlanFile) -> String {
    let mut text = String::from(
        "Plan of the repair. Every number is an estimate of a model of the metal. The vehicle maker's procedure and\n\
         licensed people come first; nothing is promised about the paint.\n\n",
    );
    if file.plan.level {
        text += &format!("Nothing stands out beyond {}. There is nothing to plan.\n", um(file.limit_mm));
        return text;
    }
    text += &verdict(file);
    if let Some(sheet) = &file.sheet {
        text += &format!(
            "It goes by {}, {:.2} mm thick; patch of {:.0} mm about x {:.0}, y {:.0} mm.\n",
            sheet.says,
            sheet.thickness_mm,
            2.0 * sheet.half_mm,
            sheet.at_mm[0],
            sheet.at_mm[1]
        );
    }
    let [gain, share] = file.plan.hand;
    text += &format!(
        "Hand: a lift asked for comes out {:.2} ± {:.2} times as far; of it the sheet keeps {:.2} ± {:.2} times what is computed.\n",
        gain[0],
        2.0 * gain[1],
        share[0],
        2.0 * share[1]
    );
    text += &remarks(file);
    for (number, round) in file.plan.rounds.iter().enumerate() {
        text += &one_round(number, round, file);
    }
    text += &ends(file);
    text += "\nCautions. Always follow the vehicle maker's procedure, local code and licensed people.\n";
    file.cautions.iter().for_each(|c| text += &format!("- {}\n", caution(*c)));
    text
}

fn verdict(file: &PlanFile) -> String {
    let mut text = match file.plan.verdict.can {
        Can::Yes => match file.plan.rounds.last() {
            Some(last) if last.expected_mm <= file.limit_mm => "Can it be done? Yes, as far as computed.\n".to_owned(),
            Some(_) => {
                "Can it be done? Nothing computed rules it out, but the rounds foretold do not reach the limit.\n"
                    .to_owned()
            }
            None => "Can it be done? Nothing computed rules it out.\n".to_owned(),
        },
        Can::PushToPaint => "Can it be done? Near level, then texture or paint (push to paint).\n".to_owned(),
        Can::No => {
            "Can it be done? No. Conventional repair is the way; what follows is only what the metal would do.\n".into()
        }
    };
    file.plan.verdict.reasons.iter().for_each(|r| text += &format!("- {}\n", reason(r)));
    if let Some(last) = file.plan.rounds.last() {
        text += &format!(
            "After all rounds foretold {} ± {} are left where it is most; the limit is {}.\n",
            um(last.expected_mm),
            um(2.0 * last.sigma_mm),
            um(file.limit_mm)
        );
    }
    text
}

fn remarks(file: &PlanFile) -> String {
    let mut text = String::new();
    if file.plan.bridged > 0.02 {
        text += &format!(
            "{:.0} % of the patch was not read and is guessed; a low too steep to read is deeper than reckoned here.\n",
            100.0 * file.plan.bridged
        );
    }
    if file.plan.misfit_mm > file.limit_mm {
        text += &format!(
            "The computed sheet is {} off what was read: a dent this shallow springs back whole there. Trust directions more than amounts.\n",
            um(file.plan.misfit_mm)
        );
    }
    if !file.fine_tips.is_empty() {
        text += &format!("Too fine for this model to tell what they do: {}.\n", file.fine_tips.join(", "));
    }
    for at in &file.plan.unreached_mm {
        text += &format!("Nothing reaches the low at {}; allow glue, or say no.\n", place(*at));
    }
    text
}

fn one_round(number: usize, round: &Round, file: &PlanFile) -> String {
    let how =
        if round.proved { "every move proved by a full solve" } else { "foretold; it changes with the next reading" };
    let mut text = format!(
        "\nRound {} ({how}): from {} to {} ± {}\n",
        number + 1,
        um(round.before_mm),
        um(round.expected_mm),
        um(2.0 * round.sigma_mm)
    );
    for (k, one) in round.moves.iter().enumerate() {
        text += &format!("{}. {}\n", k + 1, one_move(one));
        if let Some([u, v]) = file.at_px.get(number).and_then(|r| r.get(k)).copied().flatten() {
            text += &format!("   On {}: {u:.0} right, {v:.0} down.\n", file.photo);
        }
    }
    if round.left_out > 0 {
        text +=
            &format!("{} moves are left out: the sheet would pop on the way, or nothing would stay.\n", round.left_out);
    }
    text += match round.read_again {
        ReadAgain::DoubtGrows => "Stop here and read again: what comes next hangs on what these moves leave.\n",
        ReadAgain::ShouldBeLevel => "Stop here and read again: it should be level.\n",
    };
    if number == 0 {
        file.plan.departures.iter().for_each(|d| text += &format!("{}\n", departure(d)));
    }
    text
}

fn one_move(one: &Placed) -> String {
    let p = &one.planned;
    let times = if p.times > 1 { format!(", {} times", p.times) } else { String::new() };
    let mut text = format!(
        "{} at {} with {} (radius {:.0} mm, {}){times}: {} for {:.1} mm, about {:.0} N.\n",
        act(p.act),
        place(p.at_mm),
        p.tip.name,
        p.tip.radius,
        format!("{:?}", p.tip.hardness).to_lowercase(),
        if p.act.way() > 0.0 { "lift" } else { "lower" },
        p.held_mm,
        p.force_n
    );
    text += &format!("   {}\n", tooling(&one.tooling, p));
    text += &format!("   Why: {}\n", why(p));
    let lines = match p.lines {
        Lines::Opens => "the bend over the low opens",
        Lines::Flattens => "the bulge over the high flattens",
    };
    let side = if p.while_held_mm >= 0.0 { "above" } else { "below" };
    text += &format!(
        "   Lines: {lines}; while held the place stands {:.1} mm {side} level, let go {} ± {} of the way stays.\n",
        p.while_held_mm.abs(),
        um(p.leaves_mm[0]),
        um(2.0 * p.leaves_mm[1])
    );
    let risk = match p.paint_risk {
        Risk::Low => "low risk",
        Risk::Raised => "raised risk",
        Risk::High => "high risk",
    };
    text += &format!("   Paint at {:.0} °C: {risk} ({:.1} % strain).", p.paint_c, 100.0 * p.paint_strain);
    text += &format!(" Stop and read again once it has moved by {}.", um(p.stop_at_mm));
    text
}

fn act(act: Act) -> &'static str {
    match act {
        Act::Push => "Push",
        Act::Pull => "Pull",
        Act::Tap => "Tap",
        Act::Blend => "Blend",
    }
}

fn tooling(tooling: &Tooling, p: &Planned) -> String {
    match tooling {
        Tooling::Bar { tool, tip_on_it, through, trim, off_square_deg, fulcrum, gives_n, inside_mm, .. } => {
            let trim = trim.as_ref().map(|t| format!(", {t} off first")).unwrap_or_default();
            let over = match fulcrum {
                Fulcrum::Rim { packing, .. } => format!("over the opening's padded rim, {packing:.0} mm packed"),
                Fulcrum::Brace { name, packing, .. } => format!("over {name}, {packing:.0} mm packed"),
                Fulcrum::EndOn => "end on".into(),
            };
            let short = if *gives_n < p.force_n { "; it may not give that force" } else { "" };
            format!(
                "From behind with {tool}, tip {tip_on_it}, through {} of {}{trim}, {inside_mm:.0} mm in, {over}, {off_square_deg:.0}° off square; it gives {gives_n:.0} N{short}.",
                through[1], through[0]
            )
        }
        Tooling::NotDrawn => "From behind. What is there was not drawn: whether a bar reaches is not known.".into(),
        Tooling::Tab { glue, holds_n } => {
            format!("Glued with {glue}; it surely holds {:.0} N, perhaps {:.0} N. Pull square.", holds_n[0], holds_n[1])
        }
        Tooling::KnockDown => "From the front.".into(),
    }
}

fn why(p: &Planned) -> String {
    match p.why {
        Why::LargeShape { depth_mm } => format!("large shape comes before detail; the low is {} deep.", um(depth_mm)),
        Why::Low { depth_mm } => format!("a low of {} is left.", um(depth_mm)),
        Why::High { height_mm } => format!("a high of {} is left.", um(height_mm)),
        Why::Crown { height_mm, low_mm, low_comes_up_mm } => {
            let moves = if low_comes_up_mm >= 0.0 { "comes up" } else { "goes down" };
            format!(
                "a crown of {} beside a low of {}; by this move alone the low {moves} by {}.",
                um(height_mm),
                um(low_mm),
                um(low_comes_up_mm.abs())
            )
        }
    }
}

fn ends(file: &PlanFile) -> String {
    match (file.plan.rounds.last(), file.plan.verdict.can) {
        (None, Can::No) => "\nNo move is proposed.\n".into(),
        (None, _) => "\nNo move was found that helps: read again from closer, or work by eye.\n".into(),
        (Some(round), can) if can != Can::No && round.expected_mm > file.limit_mm => {
            "\nThe rounds foretold do not reach the limit. The plan is made anew after every reading and goes on from what \
             is left; whether it gets there is not foretold.\n"
                .into()
        }
        _ => String::new(),
    }
}
