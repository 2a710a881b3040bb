package org.papermath.cost;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.papermath.quantity.Kinds;

/** The tables of postage the library ships, by country; read on first use only. */
final class ShippedPostage {
    static final Map<String, PostageTable> TABLES = read();

    private ShippedPostage() {}

    private static Map<String, PostageTable> read() {
        Map<String, PostageTable.Builder> byCountry = new LinkedHashMap<>();
        List<String> lines =
                text().lines().filter(line -> !line.startsWith("#")).toList();
        List<String> columns = Arrays.asList(lines.get(0).split(";", -1));
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(";", -1);
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < cells.length; i++) {
                row.put(columns.get(i), cells[i]);
            }
            String currency = cell(row, "currency");
            byCountry
                    .computeIfAbsent(
                            cell(row, "country"),
                            country -> PostageTable.of(cell(row, "carrier"), Money.currency(currency)))
                    .rate(
                            LocalDate.parse(cell(row, "from")),
                            cell(row, "service"),
                            Kinds.MASS.of(Double.parseDouble(cell(row, "up-to")), "g"),
                            Money.of(cell(row, "price") + " " + currency),
                            cell(row, "source"));
        }
        Map<String, PostageTable> tables = new LinkedHashMap<>();
        byCountry.forEach((country, table) -> tables.put(country, table.build()));
        return tables;
    }

    private static String cell(Map<String, String> row, String column) {
        String cell = row.get(column);
        if (cell == null) {
            throw new IllegalStateException("postage-rates.csv: no " + column + " in " + row);
        }
        return cell;
    }

    private static String text() {
        try (InputStream stream = ShippedPostage.class.getResourceAsStream("postage-rates.csv")) {
            if (stream == null) {
                throw new IllegalStateException("the library is incomplete: postage-rates.csv is missing");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
