// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Bench;
import org.ohmstead.model.Cable;
import org.ohmstead.model.Meter;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Supply;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;

/** Where and with what the amplifier is tested: supply, cable, meters. */
final class BenchPage implements SectionPage {
    private static final int LEAST_WIDTH = 400;
    private static final double CAUTION_FROM_AMPS = 20;
    private static final double EXAMPLE_AMPS = 50;

    @Override
    public String id() {
        return "bench";
    }

    @Override
    public String name() {
        return Texts.text("bench.name");
    }

    @Override
    public int order() {
        return 200;
    }

    @Override
    public String iconName() {
        return "section-bench";
    }

    @Override
    public String where() {
        return "$.bench";
    }

    @Override
    public String summary(Project project) {
        return Texts.counted("bench.summary", project.bench().meters().size());
    }

    @Override
    public List<SectionItem> items(Project project) {
        List<SectionItem> items = new ArrayList<>();
        for (Meter meter : project.bench().meters()) {
            String label = meter.id() + ", " + Words.of(meter.quantity());
            items.add(new SectionItem(label, meter.name(), "$.bench.meters[" + items.size() + "]"));
        }
        return items;
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        FormPage page = new FormPage(parent, desk, "bench");
        NoteLine caution = page.note(page.body(), "caution");
        page.add(project ->
                caution.show(Severity.WARNING, caution(project.bench().supply())));
        Composite top = new Composite(page.body(), SWT.NONE);
        top.setLayout(new FlowColumns(LEAST_WIDTH, 3));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(top);
        page.part(() -> supply(page, top));
        page.part(() -> cable(page, top));
        page.part(() -> place(page, top));
        page.part(() -> meters(page));
        return page.start();
    }

    private static void meters(FormPage page) {
        page.heading(page.body(), Texts.text("bench.meters"));
        page.table(
                page.body(),
                MeterTable.spec(page::today),
                "$.bench.meters",
                project -> project.bench().meters(),
                (project, rows) -> {
                    RowIds.refuseDoubles(project.bench().meters(), rows, Meter::id);
                    return project.withBench(project.bench().withMeters(rows));
                });
    }

    private static String caution(Supply supply) {
        return supply.currentLimitAmps() < CAUTION_FROM_AMPS
                ? ""
                : Texts.text("bench.caution", Words.amperes(supply.currentLimitAmps()));
    }

    private static void place(FormPage page, Composite parent) {
        FormSection form = new FormSection(parent, "bench.place", Texts.text("bench.place"));
        bind(page, form.text("place", Texts.text("bench.place.place")), "place", Bench::place, Bench::withPlace);
        Field<OptionalDouble> ambient =
                form.optionalQuantity("ambient", Texts.text("bench.ambient"), Measure.of(Unit.CELSIUS));
        ambient.setHint(Texts.text("bench.ambient.hint"));
        bind(page, ambient, "ambientCelsius", Bench::ambientCelsius, Bench::withAmbientCelsius);
        RepeatabilityFields.add(page, form);
    }

    private static void supply(FormPage page, Composite parent) {
        FormSection form = new FormSection(parent, "bench.supply", Texts.text("bench.supply"));
        bindSupply(
                page,
                form.requiredText("name", Texts.text("bench.supply.name")),
                "name",
                Supply::name,
                Supply::withName);
        Field<Double> lowest = form.quantity("lowest", Texts.text("bench.supply.lowest"), Measure.of(Unit.VOLT));
        lowest.check(value -> page.project()
                .map(project -> project.bench().supply().highestVolts())
                .filter(highest -> value >= highest)
                .ifPresent(highest -> {
                    throw new IllegalArgumentException(Texts.text("bench.supply.lowest.refused", Words.volts(highest)));
                }));
        bindSupply(page, lowest, "lowestVolts", Supply::lowestVolts, Supply::withLowestVolts);
        Field<Double> highest = form.quantity("highest", Texts.text("bench.supply.highest"), Measure.of(Unit.VOLT));
        highest.check(value -> page.project()
                .map(project -> project.bench().supply().lowestVolts())
                .filter(least -> value <= least)
                .ifPresent(least -> {
                    throw new IllegalArgumentException(Texts.text("bench.supply.highest.refused", Words.volts(least)));
                }));
        bindSupply(page, highest, "highestVolts", Supply::highestVolts, Supply::withHighestVolts);
        bindSupply(
                page,
                form.quantity("limit", Texts.text("bench.supply.limit"), Measure.of(Unit.AMPERE)),
                "currentLimitAmps",
                Supply::currentLimitAmps,
                Supply::withCurrentLimitAmps);
    }

    private static void cable(FormPage page, Composite parent) {
        FormSection form = new FormSection(parent, "bench.cable", Texts.text("bench.cable"));
        Field<Double> section = form.quantity("section", Texts.text("bench.cable.section"), Measure.named("mm\u00b2"));
        section.setHint(Texts.text("bench.cable.section.hint"));
        bindCable(
                page,
                section,
                "crossSectionSquareMillimetres",
                Cable::crossSectionSquareMillimetres,
                Cable::withCrossSectionSquareMillimetres);
        Field<Double> loop = form.quantity("loop", Texts.text("bench.cable.loop"), Measure.of(Unit.METRE));
        loop.setHint(Texts.text("bench.cable.loop.hint"));
        bindCable(page, loop, "loopMetres", Cable::loopMetres, Cable::withLoopMetres);
        Field<OptionalDouble> measured =
                form.optionalQuantity("measured", Texts.text("bench.cable.measured"), Measure.milli(Unit.OHM));
        measured.setHint(Texts.text("bench.cable.measured.hint"));
        bindCable(page, measured, "measuredLoopOhms", Cable::measuredLoopOhms, Cable::withMeasuredLoopOhms);
        Label result = Ids.name(form.note(""), "bench.cable.result");
        page.add(project -> {
            result.setText(drop(project.bench().cable()));
            result.requestLayout();
        });
    }

    static String drop(Cable cable) {
        double ohms = cable.loopOhms();
        return Texts.text(
                cable.measuredLoopOhms().isPresent() ? "bench.cable.drop.measured" : "bench.cable.drop.copper",
                Words.ohms(ohms),
                Words.amperes(EXAMPLE_AMPS),
                Words.volts(ohms * EXAMPLE_AMPS),
                Words.watts(ohms * EXAMPLE_AMPS * EXAMPLE_AMPS));
    }

    private static <T> void bind(
            FormPage page, Field<T> field, String name, Function<Bench, T> get, BiFunction<Bench, T, Bench> with) {
        page.bind(
                field,
                "$.bench." + name,
                Texts.edit("bench." + name),
                project -> get.apply(project.bench()),
                (project, value) -> project.withBench(with.apply(project.bench(), value)));
    }

    private static <T> void bindSupply(
            FormPage page, Field<T> field, String name, Function<Supply, T> get, BiFunction<Supply, T, Supply> with) {
        page.bind(
                field,
                "$.bench.supply." + name,
                Texts.edit("supply." + name),
                project -> get.apply(project.bench().supply()),
                (project, value) -> project.withBench(
                        project.bench().withSupply(with.apply(project.bench().supply(), value))));
    }

    private static <T> void bindCable(
            FormPage page, Field<T> field, String name, Function<Cable, T> get, BiFunction<Cable, T, Cable> with) {
        page.bind(
                field,
                "$.bench.cable." + name,
                Texts.edit("cable." + name),
                project -> get.apply(project.bench().cable()),
                (project, value) -> project.withBench(
                        project.bench().withCable(with.apply(project.bench().cable(), value))));
    }
}
