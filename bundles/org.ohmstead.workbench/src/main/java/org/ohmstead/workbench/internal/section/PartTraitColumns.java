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
            Pattern.compile(NUMBER + "\\s*(?:x|\u00d7|\\*|times|mal)\\s*(?:(?:for|f\u00fcr)\\s+)?" + NUMBER + "\\s*s?");

    private PartTraitColumns() {}

    static List<Column<Part>> all() {
        return List.of(
                Columns.<Part>check(
                        "measured",
                        Texts.text("part.measured"),
                        part -> part.traits().measured(),
                        (part, value) -> part.withTraits(part.traits().withMeasured(value))),
                optional(
                                "drift",
                                Texts.text("part.drift"),
                                PPM_PER_KELVIN,
                                PartTraits::temperatureCoefficientPerKelvin,
                                PartTraits::withTemperatureCoefficientPerKelvin)
                        .withHover(part -> Texts.text("part.drift.hover")),
                optional(
                                "inductanceHenries",
                                Texts.text("part.inductance"),
                                Measure.micro(Unit.HENRY),
                                PartTraits::inductanceHenries,
                                PartTraits::withInductanceHenries)
                        .withHover(part -> Texts.text("part.inductance.hover")),
                optional(
                                "caseToAir",
                                Texts.text("part.casetoair"),
                                Measure.of(Unit.KELVIN_PER_WATT),
                                PartTraits::sinkKelvinPerWatt,
                                PartTraits::withSinkKelvinPerWatt)
                        .withHover(part -> Texts.text("part.casetoair.hover")),
                optional(
                                "wireToCase",
                                Texts.text("part.wiretocase"),
                                Measure.of(Unit.KELVIN_PER_WATT),
                                PartTraits::elementKelvinPerWatt,
                                PartTraits::withElementKelvinPerWatt)
                        .withHover(part -> Texts.text("part.wiretocase.hover")),
                Columns.<Part>shown("shortOverload", Texts.text("part.overload"), PartTraitColumns::overload)
                        .withEdit(Columns.typed(
                                TextValue.of(PartTraitColumns::readOverload, PartTraitColumns::writeOverload),
                                part -> part.traits().pulseRule(),
                                (part, rule) -> part.withTraits(part.traits().withPulseRule(rule))))
                        .withHover(part -> Texts.text("part.overload.hover")));
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
            throw new IllegalArgumentException(Texts.text("part.overload.refused", typed));
        }
        return Optional.of(new PulseRule(number(matcher.group(1)), number(matcher.group(2))));
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }
}
