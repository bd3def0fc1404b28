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
        return "Amplifier";
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
        return project.amplifier().model() + ", "
                + Words.count(project.amplifier().ratings().size(), "rating", "ratings");
    }

    @Override
    public List<SectionItem> items(Project project) {
        List<SectionItem> items = new ArrayList<>();
        for (Rating rating : project.amplifier().ratings()) {
            String what = Words.watts(rating.powerWatts()) + ", " + Words.of(rating.mode()) + ", "
                    + Words.ohms(rating.loadOhms()) + ", " + Words.of(rating.kind()) + ", at "
                    + Words.volts(rating.supplyVolts());
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
        FormSection form = new FormSection(top, "amplifier", "Identity");
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
        page.heading(limits, "Lowest loads the maker allows");
        page.smallTable(
                limits,
                AmplifierTables.lowestLoads(),
                "$.amplifier.lowestLoads",
                project -> project.amplifier().lowestLoads(),
                (project, rows) -> with(project, amplifier -> amplifier.withLowestLoads(oneForEachMode(rows))));
    }

    private static void fuses(FormPage page, Composite limits) {
        page.heading(limits, "Fuses");
        page.smallTable(
                limits,
                AmplifierTables.fuses(),
                "$.amplifier.fuses",
                project -> project.amplifier().fuses(),
                (project, rows) -> with(project, amplifier -> amplifier.withFuses(rows)));
    }

    private static void ratings(FormPage page) {
        page.heading(page.body(), "Ratings: what the maker claims");
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
        bind(page, form.text("maker", "&Maker"), "maker", Amplifier::maker, Amplifier::withMaker);
        bind(page, form.requiredText("model", "M&odel"), "model", Amplifier::model, Amplifier::withModel);
        bind(
                page,
                form.text("serial", "Se&rial number"),
                "serialNumber",
                Amplifier::serialNumber,
                Amplifier::withSerialNumber);
        bind(
                page,
                form.integer("channels", "&Channels", 1, 16),
                "channelCount",
                Amplifier::channelCount,
                Amplifier::withChannelCount);
    }

    private static void kind(FormPage page, FormSection form) {
        Field<SupplyType> supplyType =
                form.choice("supplytype", "Supply &type", List.of(SupplyType.values()), Words::of);
        supplyType.setHint(
                "Unregulated: power follows the supply. Regulated: the converter holds it. No converter: the output stage"
                        + " runs from the supply itself.");
        bind(page, supplyType, "supplyType", Amplifier::supplyType, Amplifier::withSupplyType);
        Field<OptionalDouble> heatSink =
                form.optionalQuantity("heatsink", "&Heat sink to air", Measure.of(Unit.KELVIN_PER_WATT));
        heatSink.setHint("Thermal resistance of the sink; leave it empty when it is not known.");
        bind(
                page,
                heatSink,
                "heatSinkKelvinPerWatt",
                Amplifier::heatSinkKelvinPerWatt,
                Amplifier::withHeatSinkKelvinPerWatt);
    }

    private static void notes(FormPage page, FormSection form) {
        bind(page, form.lines("notes", "&Notes"), "notes", Amplifier::notes, Amplifier::withNotes);
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
                "Set amplifier " + PlaceWords.field(name),
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
                throw new IllegalArgumentException(
                        "There is a lowest load for " + Words.of(row.mode()) + " already. Each mode has one at most.");
            }
        }
        return rows;
    }
}
