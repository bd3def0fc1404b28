// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.ohmstead.exchange.SoundSeriesCsv;
import org.ohmstead.signal.sound.DriveLinearity;
import org.ohmstead.signal.sound.SoundPoint;
import org.ohmstead.signal.sound.SoundSeries;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** A series of levels. */
@Command(
        name = "show",
        description = {"${bundle:sound.show.does}", "", "${bundle:sound.show.more}", ""},
        footer = {"", "${bundle:sound.show.exit}", "${bundle:sound.show.example}"})
final class SoundShowCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "SERIES", descriptionKey = "sound.show.SERIES")
    private Path file;

    SoundShowCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        SoundSeries series = SoundSeriesCsv.read(file);
        List<DriveLinearity> found = new ArrayList<>();
        series.points().stream()
                .map(SoundPoint::frequencyHz)
                .distinct()
                .sorted()
                .forEach(hertz -> DriveLinearity.of(series, hertz, DriveLinearity.USUAL_THRESHOLD_DB)
                        .ifPresent(found::add));
        if (json.wanted()) {
            console.json(document(series, found));
        } else {
            print(series, found);
        }
        return found.stream().anyMatch(each -> each.first().isPresent()) ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
    }

    private void print(SoundSeries series, List<DriveLinearity> found) {
        TextTable table = TextTable.named("series.columns");
        for (SoundPoint point : series.points()) {
            table.row(
                    Texts.number(point.frequencyHz()),
                    drive(point),
                    Texts.fixed(point.levelDb(), 1),
                    Texts.fixed(series.level(point).expandedUncertaintyDb(), 1),
                    point.weighting().name(),
                    point.position());
        }
        table.print(console);
        for (DriveLinearity each : found) {
            console.line("");
            String hertz = Texts.number(each.frequencyHz());
            console.line(each.first()
                    .map(point -> Texts.of(
                            "series.short",
                            hertz,
                            Texts.number(point.driveDb()),
                            Texts.fixed(point.shortfall().valueDb(), 1)))
                    .orElseGet(() -> Texts.of("series.rises", hertz)));
        }
    }

    static String drive(SoundPoint point) {
        return point.driveDb().isPresent() ? Texts.number(point.driveDb().getAsDouble()) : "";
    }

    private static ObjectNode document(SoundSeries series, List<DriveLinearity> found) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("name", series.name()).put("meter", series.meter());
        root.put("commonStandardUncertaintyDb", series.commonDb());
        root.put("repeatStandardUncertaintyDb", series.repeatDb());
        ArrayNode points = root.putArray("points");
        series.points().forEach(point -> put(points.addObject(), point));
        ArrayNode drives = root.putArray("drives");
        for (DriveLinearity each : found) {
            ObjectNode node = drives.addObject();
            node.put("frequencyHz", each.frequencyHz());
            each.first().ifPresent(point -> node.put("fallsShortFromDriveDb", point.driveDb()));
            ArrayNode list = node.putArray("shortfalls");
            each.points().forEach(point -> list.addObject()
                    .put("driveDb", point.driveDb())
                    .put("shortfallDb", point.shortfall().valueDb())
                    .put("standardUncertaintyDb", point.shortfall().standardUncertaintyDb()));
        }
        return root;
    }

    static void put(ObjectNode node, SoundPoint point) {
        node.put("frequencyHz", point.frequencyHz());
        point.driveDb().ifPresent(drive -> node.put("driveDb", drive));
        node.put("levelDb", point.levelDb());
        node.put("weighting", point.weighting().name());
        node.put("position", point.position());
    }
}
