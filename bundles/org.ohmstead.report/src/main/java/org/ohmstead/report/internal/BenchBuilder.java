// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.plot.Plot;
import org.ohmstead.report.LogStamp;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.internal.Evidence.Taken;

/** Puts the bench sheet together within a given room. */
final class BenchBuilder {
    private static final int MOST_CHARTS = 2;

    private final ResultsSheet sheet;
    private final Speech speech;
    private final Evidence evidence;
    private final ChartBook book;
    private final BenchRoom room;
    private final List<String> left = new ArrayList<>();

    BenchBuilder(ResultsSheet sheet, Speech speech, ChartBook book, BenchRoom room) {
        this.sheet = sheet;
        this.speech = speech;
        this.evidence = new Evidence(sheet, speech);
        this.book = book;
        this.room = room;
    }

    BenchView build() {
        Project project = sheet.project();
        List<CurveGroup> groups = CurveGroup.of(sheet.curves());
        RatingLines lines = new RatingLines(speech);
        int ratings = Math.min(room.ratings(), sheet.ratings().size());
        leave("bench.left.ratings", sheet.ratings().size() - ratings);
        List<Chart> charts = charts(groups);
        Table powers = limited(new CurveTables(evidence).normalised(groups), room.powers(), "bench.left.powers");
        Table settings = limited(settings(), room.settings(), "bench.left.settings");
        leave("bench.left.problems", sheet.problems().size());
        return new BenchView(
                PlainText.shortened(Facts.amplifierName(project.amplifier()), room.characters()),
                lines.conclusion(sheet.ratings(), project.sheet().rule()),
                new Facts(sheet, speech).brief(room.characters()),
                sheet.ratings().stream()
                        .limit(ratings)
                        .map(result -> lines.line(result, room.characters(), room.terms()))
                        .toList(),
                charts,
                powers,
                settings,
                evidence.confidencePercent(),
                speech.sentence(project.sheet().rule()),
                PlainText.shortened(project.sheet().remarks(), 2 * room.characters()),
                log(),
                left.isEmpty() ? "" : speech.text("bench.more", String.join(", ", left)));
    }

    private void leave(String key, long count) {
        if (count > 0) {
            left.add(speech.counted(key, count));
        }
    }

    private Table limited(Table table, int rows, String key) {
        Table limited = table.limited(rows).shortened(room.characters());
        leave(key, table.entryCount() - limited.entryCount());
        return limited;
    }

    private List<Chart> charts(List<CurveGroup> groups) {
        CurveCharts charts = new CurveCharts(evidence, sheet.ratings(), book);
        List<Plot> plots = groups.stream()
                .filter(CurveGroup::spansVoltages)
                .map(charts::plot)
                .toList();
        if (!(room.chartRatio() > 0)) {
            leave("bench.left.charts", plots.size());
            return List.of();
        }
        leave("bench.left.charts", Math.max(0, plots.size() - MOST_CHARTS));
        if (plots.size() == 1) {
            return List.of(book.whole(plots.get(0), 0.55 * room.chartRatio()));
        }
        return plots.stream()
                .limit(MOST_CHARTS)
                .map(plot -> book.half(plot, room.chartRatio()))
                .toList();
    }

    /** What was set and read where the end point was found, in the weakest channel, at the highest supply voltage. */
    private Table settings() {
        Table.Builder table = Table.titled("")
                .brief(speech.text("setting"))
                .text(speech.text("channel.short"))
                .number(speech.text("supply"), "V")
                .number(speech.text("supply"), "A")
                .number(speech.text("drive"), "dB")
                .number(speech.text("outputRms"), "V")
                .number(speech.text("power"), "W")
                .number("THD_F", "%")
                .brief(speech.text("entry"));
        for (Taken taken : highest()) {
            ChannelReading channel = taken.reading().weakestChannel();
            table.row(
                    kindAndCell(taken),
                    PlainText.shortened(channel.channel(), room.characters()),
                    speech.fixed(channel.supplyVolts(), 2),
                    speech.fixed(channel.supplyAmps(), 1),
                    speech.fixed(channel.endPointDriveDb(), 1),
                    speech.significant(channel.outputVoltsRms(), 4),
                    evidence.power(channel),
                    speech.significant(channel.thdFRatio() * 100, 3),
                    taken.entryId());
        }
        return table.build();
    }

    private String kindAndCell(Taken taken) {
        String cell = evidence.cell(taken);
        return taken.is(PowerKind.BURST) ? speech.text("setting.burst", cell) : cell;
    }

    private List<Taken> highest() {
        return Stream.of(PowerKind.values())
                .flatMap(kind -> {
                    List<Taken> all = evidence.standing(kind);
                    return all.stream().filter(taken -> all.stream()
                            .filter(taken::sameLoad)
                            .noneMatch(other -> other.aimedVolts() > taken.aimedVolts()));
                })
                .toList();
    }

    private String log() {
        LogStamp log = sheet.log();
        if (log.headHash().isEmpty()) {
            return speech.text("log.empty");
        }
        return speech.text(
                log.verified() ? "log.intact" : "log.unchecked", log.headHash(), Long.toString(log.entryCount()));
    }
}
