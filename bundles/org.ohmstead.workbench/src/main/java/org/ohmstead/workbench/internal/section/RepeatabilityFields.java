// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.ohmstead.model.Project;
import org.ohmstead.model.Repeatability;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;

/** The fields for how closely the bench finds the same power again; with the first one empty it was not studied. */
final class RepeatabilityFields {
    private static final double USUAL_FREEDOM = 9;

    private RepeatabilityFields() {}

    static void add(FormPage page, FormSection form) {
        Field<OptionalDouble> ratio =
                form.optionalQuantity("repeatability", Texts.text("repeatability.ratio"), Measure.percentOfOne());
        ratio.setHint(Texts.text("repeatability.ratio.hint"));
        page.bind(
                ratio,
                "$.bench.repeatability.ratio",
                Texts.edit("bench.repeatability.ratio"),
                project -> found(project).stream()
                        .mapToDouble(Repeatability::ratio)
                        .findFirst(),
                RepeatabilityFields::withRatio);
        Field<Double> freedom = form.quantity("freedom", Texts.text("repeatability.freedom"), Measure.named(""));
        freedom.setHint(Texts.text("repeatability.freedom.hint"));
        bind(
                page,
                freedom,
                "degreesOfFreedom",
                USUAL_FREEDOM,
                Repeatability::degreesOfFreedom,
                Repeatability::withDegreesOfFreedom);
        Field<String> origin = form.text("origin", Texts.text("repeatability.origin"));
        bind(page, origin, "origin", "", Repeatability::origin, Repeatability::withOrigin);
        page.add(project -> {
            freedom.setVisible(found(project).isPresent());
            origin.setVisible(found(project).isPresent());
        });
    }

    private static Optional<Repeatability> found(Project project) {
        return project.bench().repeatability();
    }

    private static Project withRatio(Project project, OptionalDouble ratio) {
        Optional<Repeatability> changed = ratio.isEmpty()
                ? Optional.empty()
                : Optional.of(found(project)
                        .orElse(new Repeatability(0, USUAL_FREEDOM, ""))
                        .withRatio(ratio.getAsDouble()));
        return project.withBench(project.bench().withRepeatability(changed));
    }

    private static <T> void bind(
            FormPage page,
            Field<T> field,
            String name,
            T otherwise,
            Function<Repeatability, T> get,
            BiFunction<Repeatability, T, Repeatability> with) {
        page.bind(
                field,
                "$.bench.repeatability." + name,
                Texts.edit("bench.repeatability." + name),
                project -> found(project).map(get).orElse(otherwise),
                (project, value) -> project.withBench(
                        project.bench().withRepeatability(found(project).map(present -> with.apply(present, value)))));
    }
}
