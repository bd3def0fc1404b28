// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.LowestLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SupplyType;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.section.SectionControl;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.session.ProjectDesk;

/** The device under test: what it is, what its maker allows and claims. */
final class AmplifierPage implements SectionPage {
    private static final int LEAST_WIDTH = 460;

    @Override
    public String id() {
        return "amplifier";
    }

    @Override
    public String name() {
        return Texts.text("amplifier.name");
    }

    @Override
    public int order() {
        return 100;
    }

    @Override
    public String iconName() {
        return "section-amplifier";
    }

    @Override
    public String where() {
        return "$.amplifier";
    }

    @Override
    public String summary(Project project) {
        return Texts.counted(
                "amplifier.summary",
                project.amplifier().ratings().size(),
                project.amplifier().model());
    }

    @Override
    public List<SectionItem> items(Project project) {
        List<SectionItem> items = new ArrayList<>();
        for (Rating rating : project.amplifier().ratings()) {
            String what = Texts.text(
                    "amplifier.rating.hover",
                    Words.watts(rating.powerWatts()),
                    Words.of(rating.mode()),
                    Words.ohms(rating.loadOhms()),
                    Words.of(rating.kind()),
                    Words.volts(rating.supplyVolts()));
            items.add(new SectionItem(rating.id(), what, "$.amplifier.ratings[" + items.size() + "]"));
        }
        return items;
    }

    @Override
    public SectionControl create(Composite parent, ProjectDesk desk) {
        FormPage page = new FormPage(parent, desk, "amplifier");
        Composite top = new Composite(page.body(), SWT.NONE);
        top.setLayout(new FlowColumns(LEAST_WIDTH, 2));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(top);
        FormSection form = new FormSection(top, "amplifier", Texts.text("amplifier.identity"));
        Composite limits = new Composite(top, SWT.NONE);
        Spacing.group(1).applyTo(limits);
        page.part(() -> identity(page, form));
        page.part(() -> kind(page, form));
        page.part(() -> PriceFields.add(page, form));
        page.part(() -> notes(page, form));
        page.part(() -> lowestLoads(page, limits));
        page.part(() -> fuses(page, limits));
        page.part(() -> ratings(page));
        return page.start();
    }

    private static void lowestLoads(FormPage page, Composite limits) {
        page.heading(limits, Texts.text("amplifier.lowestloads"));
        page.smallTable(
                limits,
                AmplifierTables.lowestLoads(),
                "$.amplifier.lowestLoads",
                project -> project.amplifier().lowestLoads(),
                (project, rows) -> with(project, amplifier -> amplifier.withLowestLoads(oneForEachMode(rows))));
    }

    private static void fuses(FormPage page, Composite limits) {
        page.heading(limits, Texts.text("amplifier.fuses"));
        page.smallTable(
                limits,
                AmplifierTables.fuses(),
                "$.amplifier.fuses",
                project -> project.amplifier().fuses(),
                (project, rows) -> with(project, amplifier -> amplifier.withFuses(rows)));
    }

    private static void ratings(FormPage page) {
        page.heading(page.body(), Texts.text("amplifier.ratings"));
        page.table(
                page.body(),
                AmplifierTables.ratings(),
                "$.amplifier.ratings",
                project -> project.amplifier().ratings(),
                (project, rows) -> {
                    RowIds.refuseDoubles(project.amplifier().ratings(), rows, Rating::id);
                    return with(project, amplifier -> amplifier.withRatings(rows));
                });
    }

    private static void identity(FormPage page, FormSection form) {
        bind(page, form.text("maker", Texts.text("amplifier.maker")), "maker", Amplifier::maker, Amplifier::withMaker);
        bind(
                page,
                form.requiredText("model", Texts.text("amplifier.model")),
                "model",
                Amplifier::model,
                Amplifier::withModel);
        bind(
                page,
                form.text("serial", Texts.text("amplifier.serial")),
                "serialNumber",
                Amplifier::serialNumber,
                Amplifier::withSerialNumber);
        bind(
                page,
                form.integer("channels", Texts.text("amplifier.channels"), 1, 16),
                "channelCount",
                Amplifier::channelCount,
                Amplifier::withChannelCount);
    }

    private static void kind(FormPage page, FormSection form) {
        Field<SupplyType> supplyType =
                form.choice("supplytype", Texts.text("amplifier.supplytype"), List.of(SupplyType.values()), Words::of);
        supplyType.setHint(Texts.text("amplifier.supplytype.hint"));
        bind(page, supplyType, "supplyType", Amplifier::supplyType, Amplifier::withSupplyType);
        Field<OptionalDouble> heatSink =
                form.optionalQuantity("heatsink", Texts.text("amplifier.heatsink"), Measure.of(Unit.KELVIN_PER_WATT));
        heatSink.setHint(Texts.text("amplifier.heatsink.hint"));
        bind(
                page,
                heatSink,
                "heatSinkKelvinPerWatt",
                Amplifier::heatSinkKelvinPerWatt,
                Amplifier::withHeatSinkKelvinPerWatt);
    }

    private static void notes(FormPage page, FormSection form) {
        bind(page, form.lines("notes", Texts.text("amplifier.notes")), "notes", Amplifier::notes, Amplifier::withNotes);
    }

    private static <T> void bind(
            FormPage page,
            Field<T> field,
            String name,
            Function<Amplifier, T> get,
            BiFunction<Amplifier, T, Amplifier> with) {
        page.bind(
                field,
                "$.amplifier." + name,
                Texts.edit("amplifier." + name),
                project -> get.apply(project.amplifier()),
                (project, value) -> with(project, amplifier -> with.apply(amplifier, value)));
    }

    private static Project with(Project project, Function<Amplifier, Amplifier> change) {
        return project.withAmplifier(change.apply(project.amplifier()));
    }

    private static List<LowestLoad> oneForEachMode(List<LowestLoad> rows) {
        Set<Mode> seen = new HashSet<>();
        for (LowestLoad row : rows) {
            if (!seen.add(row.mode())) {
                throw new IllegalArgumentException(Texts.text("amplifier.lowestloads.double", Words.of(row.mode())));
            }
        }
        return rows;
    }
}
