// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Draws the log's own chain as a line, and below it each joined chain with the places where it joined. */
final class ChainDrawing extends Canvas {
    private static final Messages TEXTS = Messages.of(ChainDrawing.class);
    private static final int LANE = 30;
    private static final int DOT = 8;
    private static final int LEAST_WIDTH = 240;

    private AuditFacts facts = AuditFacts.NOTHING;

    ChainDrawing(Composite parent) {
        super(parent, SWT.DOUBLE_BUFFERED);
        Ids.name(this, "audit.drawing");
        addPaintListener(event -> paint(event.gc));
    }

    void show(AuditFacts wanted) {
        facts = wanted;
        setToolTipText(AuditTexts.chainsSentence(wanted));
        redraw();
    }

    @Override
    public Point computeSize(int widthHint, int heightHint, boolean changed) {
        int lanes = Math.max(1, facts.chains().size());
        return new Point(widthHint == SWT.DEFAULT ? LEAST_WIDTH : widthHint, lanes * LANE + Spacing.GAP);
    }

    private void paint(GC gc) {
        gc.setAntialias(SWT.ON);
        Optional<ChainInfo> own = facts.own();
        if (own.isEmpty()) {
            return;
        }
        Tones tones = Tones.of(this);
        int width = getClientArea().width;
        int right = width - Spacing.MARGIN;
        int left = Spacing.MARGIN;
        long entries = Math.max(1, own.get().entries());
        int lane = 0;
        for (ChainInfo chain : facts.chains()) {
            int y = LANE * lane + LANE / 2 + Spacing.TIGHT;
            boolean joined = !chain.label().isEmpty();
            int end = right;
            if (joined) {
                end = left;
                for (LogEntry join : facts.joins()) {
                    if (join.join()
                            .filter(note -> note.label().equals(chain.label()))
                            .isPresent()) {
                        int x = left + (int) Math.round((right - left) * (double) join.sequence() / entries);
                        gc.setForeground(tones.line());
                        gc.setLineWidth(1);
                        gc.setLineStyle(SWT.LINE_DOT);
                        gc.drawLine(x, y, x, LANE / 2 + Spacing.TIGHT);
                        gc.setLineStyle(SWT.LINE_SOLID);
                        dot(gc, tones, x, y, false);
                        dot(gc, tones, x, LANE / 2 + Spacing.TIGHT, false);
                        end = Math.max(end, x);
                    }
                }
            }
            gc.setForeground(joined ? tones.mutedText() : tones.accent());
            gc.setLineWidth(2);
            gc.drawLine(left, y, Math.max(left + DOT, end), y);
            if (!joined) {
                dot(gc, tones, end, y, true);
            }
            gc.setForeground(tones.text());
            gc.drawText(label(chain), left, y + 2, true);
            lane++;
        }
    }

    private static void dot(GC gc, Tones tones, int x, int y, boolean head) {
        gc.setBackground(head ? tones.accent() : tones.mutedText());
        gc.fillOval(x - DOT / 2, y - DOT / 2, DOT, DOT);
    }

    private static String label(ChainInfo chain) {
        return TEXTS.text(
                chain.entries() == 1 ? "audit.drawn.one" : "audit.drawn.many",
                AuditTexts.name(chain),
                Long.toString(chain.entries()));
    }
}
