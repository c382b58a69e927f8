using System;
using MenuLab.Data.Freezing;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace MenuLab.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Rounds : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "attachments",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    media_type = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false),
                    taken_by = table.Column<Guid>(type: "uuid", nullable: false),
                    received_at = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_attachments", x => x.id);
                    table.ForeignKey(
                        name: "fk_attachments_people_taken_by",
                        column: x => x.taken_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "capture_entries",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    device = table.Column<Guid>(type: "uuid", nullable: false),
                    counter = table.Column<long>(type: "bigint", nullable: false),
                    author = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    received_at = table.Column<long>(type: "bigint", nullable: false),
                    received_order = table.Column<long>(type: "bigint", nullable: false),
                    draft = table.Column<Guid>(type: "uuid", nullable: true),
                    round = table.Column<Guid>(type: "uuid", nullable: true),
                    ingredient = table.Column<Guid>(type: "uuid", nullable: true),
                    answers = table.Column<Guid>(type: "uuid", nullable: true),
                    body = table.Column<byte[]>(type: "bytea", nullable: false),
                    outcome = table.Column<string>(type: "text", nullable: false),
                    met = table.Column<byte[]>(type: "bytea", nullable: true),
                    problem_field = table.Column<string>(type: "text", nullable: true),
                    problem = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_capture_entries", x => x.id);
                    table.ForeignKey(
                        name: "fk_capture_entries_people_author",
                        column: x => x.author,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "rounds",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    draft = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    started_by = table.Column<Guid>(type: "uuid", nullable: false),
                    started_at = table.Column<long>(type: "bigint", nullable: false),
                    size_kind = table.Column<string>(type: "text", nullable: false),
                    size_g = table.Column<double>(type: "double precision", nullable: true),
                    from_version = table.Column<int>(type: "integer", nullable: false),
                    from_iteration = table.Column<int>(type: "integer", nullable: true),
                    from_round = table.Column<Guid>(type: "uuid", nullable: true),
                    from_pour = table.Column<string>(type: "text", nullable: true),
                    winner = table.Column<string>(type: "text", nullable: true),
                    ended_at = table.Column<long>(type: "bigint", nullable: true),
                    ended_by = table.Column<Guid>(type: "uuid", nullable: true),
                    iteration = table.Column<int>(type: "integer", nullable: true),
                    content = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_rounds", x => x.id);
                    table.ForeignKey(
                        name: "fk_rounds_drafts_draft",
                        column: x => x.draft,
                        principalTable: "drafts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_rounds_people_ended_by",
                        column: x => x.ended_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_rounds_people_started_by",
                        column: x => x.started_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_rounds_rounds_from_round",
                        column: x => x.from_round,
                        principalTable: "rounds",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "pour_cells",
                columns: table => new
                {
                    letter = table.Column<string>(type: "text", nullable: false),
                    line = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<Guid>(type: "uuid", nullable: false),
                    specified = table.Column<double>(type: "double precision", nullable: true),
                    specified_by = table.Column<Guid>(type: "uuid", nullable: true),
                    poured = table.Column<double>(type: "double precision", nullable: true),
                    poured_by = table.Column<Guid>(type: "uuid", nullable: true),
                    batch = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_pour_cells", x => new { x.round, x.letter, x.line });
                    table.ForeignKey(
                        name: "fk_pour_cells_rounds_round",
                        column: x => x.round,
                        principalTable: "rounds",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "pour_notes",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    round = table.Column<Guid>(type: "uuid", nullable: false),
                    letter = table.Column<string>(type: "text", nullable: false),
                    author = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    received_order = table.Column<long>(type: "bigint", nullable: false),
                    body = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_pour_notes", x => x.id);
                    table.ForeignKey(
                        name: "fk_pour_notes_people_author",
                        column: x => x.author,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_pour_notes_rounds_round",
                        column: x => x.round,
                        principalTable: "rounds",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "pours",
                columns: table => new
                {
                    letter = table.Column<string>(type: "text", nullable: false),
                    round = table.Column<Guid>(type: "uuid", nullable: false),
                    poured_at = table.Column<long>(type: "bigint", nullable: true),
                    bottled_on = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_pours", x => new { x.round, x.letter });
                    table.ForeignKey(
                        name: "fk_pours_rounds_round",
                        column: x => x.round,
                        principalTable: "rounds",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_attachments_taken_by",
                table: "attachments",
                column: "taken_by");

            migrationBuilder.CreateIndex(
                name: "ix_capture_entries_answers",
                table: "capture_entries",
                column: "answers");

            migrationBuilder.CreateIndex(
                name: "ix_capture_entries_author",
                table: "capture_entries",
                column: "author");

            migrationBuilder.CreateIndex(
                name: "ix_capture_entries_outcome",
                table: "capture_entries",
                column: "outcome");

            migrationBuilder.CreateIndex(
                name: "ix_capture_entries_received_at",
                table: "capture_entries",
                column: "received_at");

            migrationBuilder.CreateIndex(
                name: "ix_capture_entries_received_order",
                table: "capture_entries",
                column: "received_order",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_pour_notes_author",
                table: "pour_notes",
                column: "author");

            migrationBuilder.CreateIndex(
                name: "ix_pour_notes_round",
                table: "pour_notes",
                column: "round");

            migrationBuilder.CreateIndex(
                name: "ix_rounds_draft_number",
                table: "rounds",
                columns: new[] { "draft", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_rounds_ended_by",
                table: "rounds",
                column: "ended_by");

            migrationBuilder.CreateIndex(
                name: "ix_rounds_from_round",
                table: "rounds",
                column: "from_round");

            migrationBuilder.CreateIndex(
                name: "ix_rounds_started_by",
                table: "rounds",
                column: "started_by");

            migrationBuilder.Freeze("capture_entries", [["id"], ["received_order"]], repeatsAreHonest: true);
            migrationBuilder.Freeze("pour_notes", [["id"]], repeatsAreHonest: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "attachments");

            migrationBuilder.DropTable(
                name: "capture_entries");

            migrationBuilder.DropTable(
                name: "pour_cells");

            migrationBuilder.DropTable(
                name: "pour_notes");

            migrationBuilder.DropTable(
                name: "pours");

            migrationBuilder.DropTable(
                name: "rounds");
        }
    }
}
