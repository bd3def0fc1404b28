// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.ohmstead.jobs.SheetAssembly;
import org.ohmstead.jobs.SheetDress;
import org.ohmstead.report.PagePicture;
import org.ohmstead.report.PageSize;
import org.ohmstead.report.ReportException;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SheetPages;
import org.ohmstead.units.text.Language;

/** Makes sheets and their pages; on any thread. */
final class SheetMaker {
    private static final String LAYOUT = "$.sheet.layout.";

    private final String softwareVersion;
    private final Clock clock;

    SheetMaker(String softwareVersion, Clock clock) {
        this.softwareVersion = Objects.requireNonNull(softwareVersion, "softwareVersion");
        this.clock = Objects.requireNonNull(clock, "clock");
    }

    String softwareVersion() {
        return softwareVersion;
    }

    Clock clock() {
        return clock;
    }

    /** Makes a sheet; what is noticed on the way is said in its language. */
    ResultsSheet sheet(SheetInput input, SheetChoice choice) {
        return Language.speaking(choice.language(), () -> {
            ResultsSheet plain = SheetAssembly.assemble(
                    input.project(), input.problems(), input.verifiedLog(), softwareVersion, clock.instant());
            return SheetDress.dress(plain, input.folder(), input.log().entries(), choice.wish());
        });
    }

    /** Makes the sheet whose verdicts and remarks the workbench itself tells, in its own language. */
    ResultsSheet told(ResultsSheet sheet, SheetInput input, SheetChoice choice) {
        return choice.isSpoken() ? sheet : sheet(input, choice.withLanguage(Language.current()));
    }

    /** Sets the pages of a sheet. The caller closes them by dropping them: they hold memory only. */
    static Pages pages(ResultsSheet sheet, ResultsSheet told) throws ReportException {
        SheetPages source = SheetPages.of(sheet);
        List<PageSize> sizes = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (int page = 0; page < source.pageCount(); page++) {
            sizes.add(source.size(page));
            words.add(source.text(page));
        }
        String remark = told.problems().stream()
                .filter(problem -> problem.where().startsWith(LAYOUT))
                .map(problem -> problem.what() + " " + problem.remedy())
                .findFirst()
                .orElse("");
        return new Pages(source, sizes, words, remark);
    }

    /**
     * The pages of a sheet.
     *
     * @param source what draws them
     * @param sizes of each page
     * @param words of each page, for those who cannot see it
     * @param remark what the sheet's look lacks, such as its logo, and why; empty when all is there
     */
    record Pages(SheetPages source, List<PageSize> sizes, List<String> words, String remark) {
        Pages {
            sizes = List.copyOf(sizes);
            words = List.copyOf(words);
        }

        PagePicture picture(int page, double scale) throws ReportException {
            return source.picture(page, scale);
        }
    }
}
