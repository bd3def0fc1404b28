// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.PulseRule;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.TextValue;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.table.Column;
import org.ohmstead.workbench.table.Columns;

/** The columns for what may be known of a part and may be left empty. */
final class PartTraitColumns {
    private static final String NONE = "\u2013";
    private static final Measure PPM_PER_KELVIN = new Measure(Unit.NONE, -6, "ppm/K");
    private static final String NUMBER = "(\\d+(?:[.,]\\d+)?|[.,]\\d+)";
    private static final Pattern OVERLOAD =
            Pattern.compile(NUMBER + "\\s*(?:x|\u00d7|\\*|times)\\s*(?:for\\s+)?" + NUMBER + "\\s*s?");

    private PartTraitColumns() {}

    static List<Column<Part>> all() {
        return List.of(
                Columns.<Part>check(
                        "measured",
                        "Measured",
                        part -> part.traits().measured(),
                        (part, value) -> part.withTraits(part.traits().withMeasured(value))),
                optional(
                                "drift",
                                "Drift",
                                PPM_PER_KELVIN,
                                PartTraits::temperatureCoefficientPerKelvin,
                                PartTraits::withTemperatureCoefficientPerKelvin)
                        .withHover(part -> "The relative change of its resistance per kelvin. Empty: not known."),
                optional(
                                "inductanceHenries",
                                "Inductance",
                                Measure.micro(Unit.HENRY),
                                PartTraits::inductanceHenries,
                                PartTraits::withInductanceHenries)
                        .withHover(part -> "Empty: not known; it then counts as having none."),
                optional(
                                "caseToAir",
                                "Case to air",
                                Measure.of(Unit.KELVIN_PER_WATT),
                                PartTraits::sinkKelvinPerWatt,
                                PartTraits::withSinkKelvinPerWatt)
                        .withHover(
                                part -> "The thermal resistance of its sink. With it the temperatures of the rating are"
                                        + " those of the case. Empty: not known; they are those of the air."),
                optional(
                                "wireToCase",
                                "Wire to case",
                                Measure.of(Unit.KELVIN_PER_WATT),
                                PartTraits::elementKelvinPerWatt,
                                PartTraits::withElementKelvinPerWatt)
                        .withHover(part ->
                                "The thermal resistance from its wire to the case, or to the air where it has no"
                                        + " sink. Empty: not known."),
                Columns.<Part>shown("shortOverload", "Short overload", PartTraitColumns::overload)
                        .withEdit(Columns.typed(
                                TextValue.of(PartTraitColumns::readOverload, PartTraitColumns::writeOverload),
                                part -> part.traits().pulseRule(),
                                (part, rule) -> part.withTraits(part.traits().withPulseRule(rule))))
                        .withHover(
                                part -> "How many times its rated power for how long its maker allows once, from cold:"
                                        + " 5 \u00d7 5 s. Empty: not known."));
    }

    private static Column<Part> optional(
            String id,
            String header,
            Measure measure,
            Function<PartTraits, OptionalDouble> get,
            BiFunction<PartTraits, OptionalDouble, PartTraits> with) {
        return Columns.optionalQuantity(
                id,
                header,
                measure,
                part -> get.apply(part.traits()),
                (part, value) -> part.withTraits(with.apply(part.traits(), value)));
    }

    private static String overload(Part part) {
        return part.traits()
                .pulseRule()
                .map(rule ->
                        Numbers.shown(rule.overloadRatio()) + " \u00d7 " + Numbers.shown(rule.durationSeconds()) + " s")
                .orElse(NONE);
    }

    private static String writeOverload(Optional<PulseRule> rule) {
        return rule.map(each ->
                        Numbers.exact(each.overloadRatio()) + " \u00d7 " + Numbers.exact(each.durationSeconds()) + " s")
                .orElse("");
    }

    private static Optional<PulseRule> readOverload(String text) {
        String typed = text.strip();
        if (typed.isEmpty() || typed.equals(NONE)) {
            return Optional.empty();
        }
        Matcher matcher = OVERLOAD.matcher(typed);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("\"" + typed
                    + "\" is no overload; write how many times the rated power for how long, such as 5 x 5 s.");
        }
        return Optional.of(new PulseRule(number(matcher.group(1)), number(matcher.group(2))));
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }
}
